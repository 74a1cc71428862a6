// A damaged book on the screens: what reads is shown and judged, what does not is named, and a book
// that is damaged is told before the first tap.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>

#include "app/book_pours.h"
#include "app/session.h"
#include "cli/commands.h"
#include "pour/log/script.h"
#include "temp_folder.h"

using namespace rb;
using namespace std::chrono_literals;

namespace {

const Moment kStart = *parse_moment("2026-03-02T05:00:00.000Z");

Entry at_start() {
  return {kStart, kStart.time_since_epoch(), "boot"};
}

std::string opening(const std::string& pour) {
  return R"({"at":"2026-03-02T05:00:00.000Z","by":"f","do":"pour-open","pour":")" + pour +
         R"(","plan":{"name":"wall )" + pour +
         R"(","people":[{"id":"f","name":"F","role":"foreman"}],)"
         R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
         R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[3,3],"rows":[]}]}})"
         "\n";
}

std::string note(const std::string& text) {
  return R"({"at":"2026-03-02T05:01:00.000Z","by":"f","do":"note","text":")" + text + "\"}\n";
}

void put(Logbook& book, const std::string& script) {
  const auto read = read_script(script, "test");
  REQUIRE_MESSAGE(read, (read ? "" : to_text(read.error())));
  REQUIRE(book.append_script(*read, script_entry(at_start())));
}

/// Two pours; of P1 the notes "first", "second", "third". The book is as long as `filling` makes
/// it.
std::filesystem::path book_in(const test::TempFolder& folder, std::size_t filling = 0) {
  auto path = folder.path / "a.risebook";
  auto book = Logbook::create(path);
  REQUIRE(book);
  put(*book, opening("P1") + note("first") + note("second") + note("third"));
  put(*book, opening("P2") + note("of the other"));
  for (std::size_t i = 0; i < filling; ++i) {
    std::string script = opening("F" + std::to_string(i));
    for (int n = 0; n < 50; ++n) script += note(std::string(1900, 'x'));
    put(*book, script);
  }
  return path;
}

/// One letter of the file changed where `words` stand, each time they do.
void damage(const std::filesystem::path& path, const std::string& words) {
  std::ifstream in{path, std::ios::binary};
  std::string bytes{std::istreambuf_iterator<char>(in), {}};
  int found = 0;
  for (auto at = bytes.find(words); at != std::string::npos; at = bytes.find(words, at + 1)) {
    bytes[at] ^= 1;
    ++found;
  }
  REQUIRE(found > 0);
  std::ofstream{path, std::ios::binary} << bytes;
}

std::unique_ptr<Session> open(const std::filesystem::path& book) {
  auto session = Session::open(book, at_start, 0min);
  REQUIRE_MESSAGE(session, (session ? "" : to_text(session.error())));
  REQUIRE((*session)->settle());
  return std::move(*session);
}

void go_to(Session& session, const char* pour) {
  session.go_to(PourId{pour});
  REQUIRE(session.settle());
}

}  // namespace

TEST_CASE("a pour with a damaged event opens: what reads is judged, what does not is named") {
  const test::TempFolder folder;
  const auto path = book_in(folder);
  damage(path, "\"second\"");
  const auto session = open(path);
  go_to(*session, "P1");
  const auto world = session->look();
  REQUIRE(world.state != nullptr);
  CHECK(world.report != nullptr);
  CHECK(world.state->log.size() == 3);
  CHECK(world.damage.events == 1);
  CHECK(world.damage.ids.ends_with("-3"));
  // The rest of the book is untouched by it.
  go_to(*session, "P2");
  CHECK(session->look().damage.events == 0);
  CHECK(session->pour()->log.size() == 2);
}

TEST_CASE("a damaged book is read, not written, and says so before the first tap") {
  const test::TempFolder folder;
  const auto path = book_in(folder);
  damage(path, "\"second\"");
  const auto session = open(path);
  go_to(*session, "P2");
  const auto keeping = session->look().keeping;
  CHECK(keeping.state == screens::Keeping::State::read_only);
  CHECK(keeping.trouble == BookTrouble::damaged);
  session->act({screens::KeepEvent{event::Note{"x", {}, {}}, kStart}});
  const auto world = session->look();
  REQUIRE(world.trouble);
  CHECK(world.trouble->not_kept);
  CHECK(session->pour()->log.size() == 2);
}

TEST_CASE("the list names what is damaged on the card of its pour alone") {
  const test::TempFolder folder;
  const auto path = book_in(folder);
  damage(path, "\"second\"");
  const auto session = open(path);
  session->act({screens::LeavePour{}});
  REQUIRE(session->settle());
  const auto world = session->look();
  REQUIRE(world.pours->size() == 2);
  for (const auto& card : *world.pours) {
    CHECK(card.damage.events == (card.id == PourId{"P1"} ? 1U : 0U));
  }
}

TEST_CASE("a pour whose opening event is damaged stands in the list and says why it is not shown") {
  const test::TempFolder folder;
  const auto path = book_in(folder);
  damage(path, "\"wall P1\"");
  const auto session = open(path);
  go_to(*session, "P1");
  const auto world = session->look();
  CHECK((world.state == nullptr || world.state->pour != PourId{"P1"}));
  REQUIRE(world.trouble);
  CHECK(world.trouble->word == screens::Word::damaged_opening);
  CHECK(world.trouble->number == 3);
  go_to(*session, "P2");
  CHECK(session->pour()->pour == PourId{"P2"});
}

TEST_CASE(
    "in a long book a damaged event far back is told when its pour is opened; taps are kept") {
  const test::TempFolder folder;
  const auto path = book_in(folder, 14);
  REQUIRE(std::filesystem::file_size(path) > (1U << 20U));
  damage(path, "\"second\"");
  const auto session = open(path);
  go_to(*session, "P1");
  const auto world = session->look();
  CHECK(world.damage.events == 1);
  REQUIRE(world.trouble);
  CHECK(world.trouble->word == screens::Word::damaged_judged);
  session->act({screens::PutTroubleAway{}});
  session->act({screens::KeepEvent{event::Note{"goes on", {}, {}}, kStart}});
  REQUIRE(session->settle());
  CHECK(session->look().keeping.state == screens::Keeping::State::kept);
  CHECK(session->pour()->log.size() == 4);
}

TEST_CASE("commands on a damaged book give what reads and end with trouble with the book") {
  const test::TempFolder folder;
  const auto path = book_in(folder);
  damage(path, "\"second\"");
  const auto to = folder.path / "record";
  std::filesystem::create_directory(to);
  CHECK(run_check({.book = path, .pour = "P1"}) == Exit::book);
  CHECK(run_script(path, "P1") == Exit::book);
  CHECK(run_script(path, "P2") == Exit::fine);
  CHECK(run_dose({.book = path, .pour = "P1", .element = "W1", .at = "1,1"}) == Exit::book);
  CHECK(run_dose({.book = path, .pour = "P2", .element = "W1", .at = "1,1"}) == Exit::fine);
  CHECK(run_record({.book = path,
                    .day = "2026-03-02",
                    .folder = to,
                    .formats = {"csv"},
                    .utc_offset = "+00:00"}) == Exit::book);
  CHECK_FALSE(std::filesystem::is_empty(to));
}
