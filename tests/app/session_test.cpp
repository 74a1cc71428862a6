// The program between screens and book: who is told as the one who tapped.
#include "app/session.h"

#include <doctest/doctest.h>

#include "app/settings_file.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "temp_folder.h"

using namespace rb;
using namespace std::chrono_literals;

namespace {

const char* const kScript =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"day","do":"pour-open","pour":"P1","plan":{)"
    R"("people":[{"id":"qc","name":"Q","role":"inspector"},{"id":"day","name":"D","role":"foreman"},)"
    R"({"id":"night","name":"N","role":"foreman"}],)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5}],)"
    R"("elements":[{"id":"W1","length":6,"height":3,"thickness":0.3,"bays":[3,3],"rows":[]}]}})"
    "\n";

struct Clock {
  Moment now = *parse_moment("2026-03-02T05:10:00.000Z");
  Entry operator()() const { return {now, now.time_since_epoch(), "boot"}; }
};

std::filesystem::path book_in(const test::TempFolder& folder) {
  const auto path = folder.path / "a.risebook";
  auto script = read_script(kScript, "test");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  auto book = Logbook::open_or_create(path);
  REQUIRE(book);
  REQUIRE(book->append_script(*script, script_entry(Clock{}())));
  return path;
}

std::unique_ptr<Session> open(const std::filesystem::path& book) {
  auto session = Session::open(book, Clock{}, 0min);
  REQUIRE_MESSAGE(session, (session ? "" : to_text(session.error())));
  REQUIRE((*session)->settle());
  return std::move(*session);
}

const Person kNight{PersonId{"night"}, "N", "foreman"};

PersonId by_of_a_note(Session& session) {
  session.act({screens::KeepEvent{event::Note{"x", {}, {}}, Clock{}.now}});
  REQUIRE(session.pour() != nullptr);
  return session.pour()->log.back().event.by;
}

}  // namespace

TEST_CASE("until someone is chosen the plan's first foreman holds the tablet") {
  const test::TempFolder folder;
  const auto session = open(book_in(folder));
  CHECK(by_of_a_note(*session) == PersonId{"day"});
}

TEST_CASE("the chosen holder is told by every event from then on, and survives a restart") {
  const test::TempFolder folder;
  const auto book = book_in(folder);
  const auto file = folder.path / "screens.json";
  {
    const auto session = open(book);
    screens::Settings settings = read_settings(file);
    session->on_settings = [&](const screens::Settings& changed) { write_settings(file, changed); };
    settings.holder = kNight;
    session->act({screens::ChangeSettings{settings}});
    CHECK(by_of_a_note(*session) == PersonId{"night"});
  }
  const auto session = open(book);
  session->held_by(read_settings(file).holder);
  CHECK(by_of_a_note(*session) == PersonId{"night"});
}

TEST_CASE("a holder another pour's plan does not know is not told as if he did") {
  const test::TempFolder folder;
  const auto session = open(book_in(folder));
  session->held_by(Person{PersonId{"somebody else"}, "S", "foreman"});
  CHECK(by_of_a_note(*session) == PersonId{"day"});
  // Plans number their people alike: the inspector of this one is not the foreman of another.
  session->held_by(Person{PersonId{"qc"}, "Z", "foreman"});
  CHECK(by_of_a_note(*session) == PersonId{"day"});
}

TEST_CASE("sound and holder are kept with the settings; a file of before means sound, no holder") {
  const test::TempFolder folder;
  const auto file = folder.path / "screens.json";
  CHECK(read_settings(file) == screens::Settings{});
  screens::Settings settings;
  settings.sound = false;
  settings.holder = kNight;
  write_settings(file, settings);
  CHECK(read_settings(file) == settings);
}

TEST_CASE("after the tablet's clock was set an hour on, a tap is still told at its true moment") {
  const test::TempFolder folder;
  Clock hands;
  Seconds step{};
  const auto clock = [&] {
    const Entry entry = hands();
    return Entry{after(entry.wall, step), entry.steady, entry.boot};
  };
  auto session = Session::open(book_in(folder), clock, 0min);
  REQUIRE(session);
  REQUIRE((*session)->settle());
  // Taps carry the wall clock, as the window gives it.
  const auto note = [&] {
    (*session)->act({screens::KeepEvent{event::Note{"x", {}, {}}, clock().wall}});
    return (*session)->pour()->log.back().when;
  };
  const Moment before = note();
  hands.now += 10s;
  step = hours(1);
  CHECK(between(before, (*session)->now()) == seconds(10));
  CHECK(between(before, note()) == seconds(10));
  hands.now += 10s;
  CHECK(between(before, note()) == seconds(20));
}

TEST_CASE("a clock behind the pour's last entry is told of before anything is logged") {
  const test::TempFolder folder;
  const auto book = book_in(folder);
  { (void)by_of_a_note(*open(book)); }
  const auto behind = [&](std::chrono::minutes minutes) {
    Clock hands;
    hands.now -= minutes;
    auto session = Session::open(
        book,
        [=] {
          return Entry{hands.now, Seconds{5}, "another boot"};
        },
        0min);
    REQUIRE(session);
    REQUIRE((*session)->settle());
    return std::move(*session);
  };
  CHECK_FALSE(behind(0min)->look().trouble);
  const auto session = behind(45min);
  REQUIRE(session->look().trouble);
  CHECK(session->look().trouble->text.find("45 min before") != std::string::npos);
  CHECK_FALSE(session->look().trouble->not_kept);
  session->act({screens::PutTroubleAway{}});
  CHECK_FALSE(session->look().trouble);
}
