// What was done to a book behind its back is found and named.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include <string>

#include "samples.h"

using namespace rb;
using namespace rb::samples;

namespace {

struct Tampered {
  const char* name;
  const char* sql;    ///< done by a program that first took the triggers away
  int first_bad;      ///< the number in the id that is named, 0 = none
  const char* words;  ///< in the first fault
};

constexpr Tampered kTampered[] = {
    {"a changed line", "UPDATE events SET line = replace(line, 'note 3', 'note 8') WHERE seq = 4",
     4, "was changed"},
    {"a changed time of entry", "UPDATE events SET entered = entered - 60000 WHERE seq = 4", 4,
     "was changed"},
    {"a changed steady clock", "UPDATE events SET steady = steady + 1 WHERE seq = 4", 4,
     "was changed"},
    {"a changed start", "UPDATE events SET boot = 'x' WHERE seq = 4", 4, "was changed"},
    {"a changed time of keeping", "UPDATE events SET kept = 0 WHERE seq = 4", 4, "was changed"},
    {"an event moved to another pour", "UPDATE events SET pour = 'N2' WHERE seq = 4", 4,
     "was changed"},
    {"an event named anew", "UPDATE events SET id = 'AAAAA-4' WHERE seq = 4", -4, "number 4"},
    {"a changed hash", "UPDATE events SET hash = zeroblob(32) WHERE seq = 4", 4, "was changed"},
    {"the last event gone", "DELETE FROM events WHERE seq = 9", 9, "ends at event"},
    {"the last three events gone", "DELETE FROM events WHERE seq > 6", 7, "ends at event"},
    {"a middle event gone", "DELETE FROM events WHERE seq = 5", 5, "is missing"},
    {"middle events gone", "DELETE FROM events WHERE seq BETWEEN 5 AND 7", 5, "are missing"},
    {"the first event gone", "DELETE FROM events WHERE seq = 1", 1, "is missing"},
    {"all events gone", "DELETE FROM events", 1, "ends at event none"},
    {"an event gone and the rest moved up",
     "DELETE FROM events WHERE seq = 5; UPDATE events SET seq = seq - 1 WHERE seq > 5; "
     "UPDATE head SET seq = 8",
     6, "does not follow"},
    {"two events changed about",
     "UPDATE events SET seq = 100 WHERE seq = 4; UPDATE events SET seq = 4 WHERE seq = 5; "
     "UPDATE events SET seq = 5 WHERE seq = 100",
     5, "does not follow"},
    {"an event slipped in at the end",
     "INSERT INTO events SELECT 10, pour, (SELECT tag FROM book) || '-10', line, entered, steady, "
     "boot, kept, (SELECT hash FROM head), hash FROM events WHERE seq = 9",
     10, "was changed"},
    {"the head set back with the last event",
     "DELETE FROM events WHERE seq = 9; UPDATE head SET seq = 8", 0, "head of the book"},
    {"the head gone", "DELETE FROM head", 0, "head of the book is missing"},
    {"the book's own name changed", "UPDATE book SET created = created + 1", 1, "does not follow"},
};

fs::path nine_events(const Folder& folder) {
  auto path = folder / "book.risebook";
  auto book = book_with_pour(path);
  for (int i = 1; i < 9; ++i) {
    got(book.append(PourId{"N1"}, note("note " + std::to_string(i)), entry_at(i)));
  }
  return path;
}

/// Does `sql` with every trigger out of the way, then puts them back as they were.
void tamper(const fs::path& path, const char* sql) {
  SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
  std::vector<std::string> drop, put_back;
  SQLite::Statement triggers(bare, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
  while (triggers.executeStep()) {
    drop.push_back("DROP TRIGGER " + triggers.getColumn(0).getString());
    put_back.push_back(triggers.getColumn(1).getString());
  }
  triggers.reset();
  for (const auto& each : drop) bare.exec(each);
  bare.exec(sql);
  for (const auto& each : put_back) bare.exec(each);
}

VerifyReport verified(const fs::path& path) {
  return got(got(Logbook::open(path, Access::read)).verify());
}

}  // namespace

TEST_CASE("an untouched book is sound") {
  const Folder folder;
  const auto path = nine_events(folder);
  const auto report = verified(path);
  CHECK(report.sound());
  CHECK(report.events == 9);
  CHECK_FALSE(report.first_bad);
  CHECK(report.tag.size() == 5);
  CHECK(report.head_hash == got(got(Logbook::open(path, Access::read)).head_hash()));
}

TEST_CASE("an empty book is sound") {
  const Folder folder;
  got(Logbook::create(folder / "book.risebook"));
  CHECK(verified(folder / "book.risebook").sound());
}

TEST_CASE("taking the triggers away and putting them back leaves a sound book") {
  const Folder folder;  // so that what the next test finds is what was done in between
  const auto path = nine_events(folder);
  tamper(path, "SELECT 1");
  CHECK(verified(path).sound());
}

TEST_CASE("what was changed behind the book's back is found and named") {
  for (const auto& each : kTampered) {
    CAPTURE(std::string(each.name));
    const Folder folder;
    const auto path = nine_events(folder);
    tamper(path, each.sql);
    const auto report = verified(path);
    REQUIRE_FALSE(report.sound());
    CAPTURE(report.faults[0]);
    CHECK(report.faults[0].find(each.words) != std::string::npos);
    if (each.first_bad == 0) {
      CHECK_FALSE(report.first_bad);
    } else if (each.first_bad < 0) {
      CHECK(report.first_bad == EventId{"AAAAA-4"});
    } else {
      REQUIRE(report.first_bad);
      CHECK(report.first_bad->text == report.tag + "-" + std::to_string(each.first_bad));
    }
  }
}

TEST_CASE("an altered schema is found and named") {
  struct Altered {
    const char* sql;
    const char* words;
  };
  for (const auto& each : {
           Altered{"DROP TRIGGER events_never_change", "events_never_change is missing"},
           Altered{"DROP TRIGGER events_never_go; CREATE TRIGGER events_never_go BEFORE DELETE ON "
                   "events BEGIN SELECT 1; END",
                   "events_never_go is altered"},
           Altered{"CREATE TRIGGER quiet AFTER INSERT ON events BEGIN SELECT 1; END",
                   "quiet does not belong"},
           Altered{"DROP INDEX events_of_pour", "events_of_pour is missing"},
           Altered{"CREATE TABLE other (x)", "other does not belong"},
           Altered{"ALTER TABLE events ADD COLUMN more TEXT", "events is altered"},
       }) {
    CAPTURE(std::string(each.sql));
    const Folder folder;
    const auto path = nine_events(folder);
    SQLite::Database(path.string(), SQLite::OPEN_READWRITE).exec(each.sql);
    const auto report = verified(path);
    REQUIRE(report.faults.size() == 1);
    CHECK(report.faults[0].find(each.words) != std::string::npos);
  }
}

TEST_CASE("a line that is no event is an error of the book and a fault, never a crash") {
  const Folder folder;
  const auto path = nine_events(folder);
  for (const char* line : {"", "{", "null", "[]", "{\"at\":1}", "\xff\xfe"}) {
    CAPTURE(std::string(line));
    tamper(path, ("UPDATE events SET line = '" + std::string(line) + "' WHERE seq = 4").c_str());
    auto book = got(Logbook::open(path, Access::read));
    const auto events = book.events(PourId{"N1"});
    REQUIRE_FALSE(events);
    CHECK(events.error().kind == Error::Kind::book);
    CHECK(to_text(events.error()).find(book.tag() + "-4") != std::string::npos);
    CHECK(got(book.pours()).size() == 1);
    CHECK(got(book.verify()).first_bad == EventId{book.tag() + "-4"});
  }
}

TEST_CASE("a book with a damaged page is an error or a fault, never a crash") {
  const Folder folder;
  const auto path = nine_events(folder);
  const auto whole = bytes_of(path);
  REQUIRE(whole.size() % 4096 == 0);
  for (std::size_t page = 0; page * 4096 < whole.size(); ++page) {
    CAPTURE(page);
    auto damaged = whole;
    for (std::size_t i = 0; i < 4096; i += 3) damaged[page * 4096 + i] ^= '\x5a';
    std::ofstream(path, std::ios::binary) << damaged;
    const auto book = Logbook::open(path, Access::read);
    if (!book) {
      CHECK(book.error().kind == Error::Kind::book);
      continue;
    }
    static_cast<void>(book->events(PourId{"N1"}));
    static_cast<void>(book->pours());
    CHECK_FALSE(got(book->verify()).sound());
  }
}
