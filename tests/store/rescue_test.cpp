// What is whole in a damaged book goes into a new one as it is, and what is lost is told there.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include "samples.h"
#include "store/book/row_reader.h"
#include "store/copies/mirror.h"
#include "store/copies/rescue.h"
#include "store/file/row_text.h"

using namespace rb;
using namespace rb::samples;

namespace {

/// Two pours of twelve events, an event's own text in each.
fs::path book_in(const Folder& folder) {
  auto path = folder / "book.risebook";
  auto book = got(Logbook::create(path));
  for (const char* pour : {"N1", "N2"}) {
    got(book.append(PourId{pour}, open_event(pour), entry_at(0)));
    for (int i = 1; i < 12; ++i) {
      const auto text = std::string(pour) + " text " + std::to_string(i) + std::string(500, '.');
      got(book.append(PourId{pour}, note(text, i), entry_at(i)));
    }
  }
  return path;
}

std::vector<store::KeptRow> rows_of(const fs::path& path) {
  auto reader = got(store::RowReader::open(path));
  return got(reader.after(0, 1000));
}

void write_mirror(const fs::path& path, const fs::path& book) {
  auto reader = got(store::RowReader::open(book));
  std::ofstream mirror(path, std::ios::binary);
  mirror << store::line_of(reader.name());
  for (const auto& row : got(reader.after(0, 1000))) mirror << store::line_of(row);
}

void break_text(const fs::path& path, const std::string& text) {
  auto bytes = bytes_of(path);
  const auto at = bytes.find(text);
  REQUIRE(at != std::string::npos);
  bytes[at] ^= '\x01';
  std::ofstream(path, std::ios::binary) << bytes;
}

}  // namespace

TEST_CASE("a sound book is rescued whole") {
  const Folder folder;
  const auto old = book_in(folder);
  const auto fresh = folder / "new.risebook";
  const auto report = got(store::rescue_book(old, fresh));
  CHECK(report.lost.empty());
  CHECK(report.faults.empty());
  CHECK(report.events == 24);
  CHECK(report.last_good == 24);
  const auto one = got(Logbook::open(old, Access::read));
  const auto two = got(Logbook::open(fresh, Access::read));
  CHECK(one.uuid() == two.uuid());
  CHECK(one.tag() == two.tag());
  CHECK(got(one.head_hash()) == got(two.head_hash()));
  CHECK(got(one.events(PourId{"N2"})) == got(two.events(PourId{"N2"})));
}

TEST_CASE("a rescue keeps numbers, ids and hashes, tells what is lost, and the book goes on") {
  const Folder folder;
  const auto old = book_in(folder);
  const auto before = rows_of(old);
  break_text(old, "N1 text 5.");
  break_text(old, "N2 text 11.");  // the last of all
  const auto old_bytes = bytes_of(old);
  const auto fresh = folder / "new.risebook";
  const auto report = got(store::rescue_book(old, fresh));
  CHECK(bytes_of(old) == old_bytes);
  REQUIRE(report.lost.size() == 2);
  CHECK(report.lost[0].number == 6);
  CHECK(report.lost[0].pour == PourId{"N1"});
  CHECK(report.lost[1].number == 24);
  for (const auto& fault : report.faults) FAIL_CHECK(fault);
  CHECK(report.events == 22);
  CHECK(report.last_good == 5);
  CHECK(report.last_good_hash == store::to_hex(before[4].hash));
  const auto after = rows_of(fresh);
  REQUIRE(after.size() == 22);
  for (const auto& row : after) {
    const auto& was = before.at(static_cast<std::size_t>(row.row.seq - 1));
    CHECK(row.hash == was.hash);
    CHECK(row.row.id == was.row.id);
    CHECK(row.row.line == was.row.line);
  }
  SQLite::Database bare(fresh.string(), SQLite::OPEN_READONLY);
  CHECK(bare.execAndGet("SELECT seq FROM origins").getInt() == 5);
  auto book = got(Logbook::open(fresh, Access::write));
  const auto kept = got(book.append(PourId{"N2"}, note("goes on"), entry_at(30)));
  CHECK(kept.id.text == book.tag() + "-25");
  const auto looked = got(book.verify());
  for (const auto& fault : looked.faults) FAIL_CHECK(fault);
  CHECK(looked.lost.size() == 2);
}

TEST_CASE("with a mirror every event is rescued, and only rows that hold are taken from it") {
  const Folder folder;
  const auto old = book_in(folder);
  const auto mirror = folder / "book.riseline";
  write_mirror(mirror, old);
  break_text(old, "N1 text 5.");
  break_text(old, "N2 text 3.");
  SUBCASE("") {
    const auto report = got(store::rescue_book(old, folder / "new.risebook", mirror));
    CHECK(report.lost.empty());
    CHECK(report.from_mirror == 2);
    CHECK(report.events == 24);
    CHECK(report.last_good == 5);
    for (const auto& fault : report.faults) FAIL_CHECK(fault);
  }
  SUBCASE("one of whose lines is damaged too") {
    break_text(mirror, "N2 text 3.");
    const auto report = got(store::rescue_book(old, folder / "new.risebook", mirror));
    REQUIRE(report.lost.size() == 1);
    CHECK(report.lost[0].number == 16);
    CHECK(report.from_mirror == 1);
  }
  SUBCASE("of another book is refused") {
    const Folder elsewhere;
    write_mirror(mirror, book_in(elsewhere));
    const auto report = store::rescue_book(old, folder / "new.risebook", mirror);
    REQUIRE_FALSE(report);
    CHECK(report.error().kind == Error::Kind::input);
    CHECK_FALSE(fs::exists(folder / "new.risebook"));
  }
}

TEST_CASE("a book whose first page is gone is rescued with its mirror's name, or a new one") {
  const Folder folder;
  const auto old = book_in(folder);
  const auto mirror = folder / "book.riseline";
  write_mirror(mirror, old);
  const auto uuid = got(Logbook::open(old, Access::read)).uuid();
  auto bytes = bytes_of(old);
  bool with_mirror = false;
  SUBCASE("no mirror") {}
  SUBCASE("a mirror") {
    with_mirror = true;
  }
  // Every page up to the first event's: schema, the book's own row, the head.
  const auto first_event = bytes.find("pour-open");
  REQUIRE(first_event != std::string::npos);
  for (std::size_t at = 0; at < first_event / 4096 * 4096; ++at) bytes[at] = '\x5a';
  std::ofstream(old, std::ios::binary) << bytes;
  const auto fresh = folder / "new.risebook";
  const auto report =
      got(store::rescue_book(old, fresh, with_mirror ? std::optional(mirror) : std::nullopt));
  for (const auto& fault : report.faults) FAIL_CHECK(fault);
  CHECK(report.events == 24);
  auto book = got(Logbook::open(fresh, Access::write));
  if (with_mirror) CHECK(book.uuid() == uuid);
  CHECK(got(book.events(PourId{"N1"})).size() == 12);
  CHECK(got(book.append(PourId{"N1"}, note("goes on"), entry_at(30))).id.text ==
        book.tag() + "-25");
  CHECK(got(book.verify()).sound());
}

TEST_CASE("a rescue writes over nothing, and says so where there is nothing to save") {
  const Folder folder;
  const auto old = book_in(folder);
  std::ofstream(folder / "there") << "mine";
  CHECK_FALSE(store::rescue_book(old, folder / "there"));
  CHECK(bytes_of(folder / "there") == "mine");
  CHECK_FALSE(store::rescue_book(old, old));
  const auto none = store::rescue_book(folder / "none", folder / "new");
  REQUIRE_FALSE(none);
  CHECK(none.error().kind == Error::Kind::book);
  std::ofstream(folder / "text") << std::string(20'000, 'x');
  const auto nothing = store::rescue_book(folder / "text", folder / "new");
  REQUIRE_FALSE(nothing);
  CHECK(nothing.error().kind == Error::Kind::book);
  CHECK_FALSE(fs::exists(folder / "new"));
}
