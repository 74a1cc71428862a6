// The book refuses to be changed: on its own connection, and by any program that opens the file.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/log/event.h"
#include "samples.h"
#include "store/book/connection.h"

using namespace rb;
using namespace rb::samples;

namespace {

/// What neither the book's own connection nor a bare one may do.
constexpr const char* kRefusedEverywhere[] = {
    "UPDATE events SET line = '{}' WHERE seq = 2",
    "UPDATE OR REPLACE events SET seq = 1 WHERE seq = 2",
    "UPDATE OR IGNORE events SET line = '{}'",
    "DELETE FROM events WHERE seq = 2",
    "DELETE FROM events",
    // An existing event, by number and by id, whatever the conflict rule.
    "INSERT OR REPLACE INTO events SELECT * FROM events WHERE seq = 2",
    "REPLACE INTO events SELECT seq + 100, pour, id, line, entered, steady, boot, kept, prev_hash, "
    "hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT * FROM events WHERE seq = 2 ON CONFLICT DO UPDATE SET line = '{}'",
    "INSERT OR IGNORE INTO events SELECT * FROM events WHERE seq = 2",
    // A new one that leaves a gap, comes before the first, has no number, or hangs on another hash.
    "INSERT INTO events SELECT 5, pour, (SELECT tag FROM book) || '-5', line, entered, steady, "
    "boot, "
    "kept, (SELECT hash FROM head), hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT 0, pour, (SELECT tag FROM book) || '-0', line, entered, steady, "
    "boot, "
    "kept, (SELECT hash FROM head), hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT NULL, pour, (SELECT tag FROM book) || '-4', line, entered, steady, "
    "boot, kept, (SELECT hash FROM head), hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT 4, pour, (SELECT tag FROM book) || '-4', line, entered, steady, "
    "boot, "
    "kept, prev_hash, hash FROM events WHERE seq = 2",
    "INSERT INTO events SELECT 4, pour, 'OTHER-4', line, entered, steady, boot, "
    "kept, (SELECT hash FROM head), hash FROM events WHERE seq = 2",
    "UPDATE head SET seq = 1",
    "UPDATE head SET seq = seq + 1",
    "UPDATE head SET hash = zeroblob(32)",
    "DELETE FROM head",
    "INSERT OR REPLACE INTO head VALUES (1, 0, zeroblob(32))",
    "UPDATE book SET tag = 'XXXXX'",
    "DELETE FROM book",
    "INSERT OR REPLACE INTO book SELECT * FROM book",
    // What is marked of a pour, keys and signed heads.
    "UPDATE pours SET pour = 'N2'",
    "UPDATE pours SET first = 2",
    "UPDATE pours SET opened = 0",
    "DELETE FROM pours",
    "REPLACE INTO pours SELECT * FROM pours",
    "INSERT OR REPLACE INTO pours (pour, first, name, site, told, opened) VALUES ('N2', 1, '', '', "
    "'', 0)",
    "UPDATE pour_days SET day = day + 1",
    "DELETE FROM pour_days",
    "REPLACE INTO pour_days SELECT * FROM pour_days",
    "INSERT INTO pour_days VALUES (1, 'N2')",
    "UPDATE pour_boots SET lead = 0",
    "DELETE FROM pour_boots",
    "REPLACE INTO pour_boots SELECT * FROM pour_boots",
    "UPDATE keys SET since = 0",
    "DELETE FROM keys",
    "REPLACE INTO keys SELECT * FROM keys",
    "UPDATE heads SET made = 0",
    "DELETE FROM heads",
    "REPLACE INTO heads SELECT * FROM heads",
    "INSERT INTO heads SELECT 3, key, zeroblob(32), signature, made FROM heads",
    "INSERT INTO heads SELECT 3, zeroblob(32), (SELECT hash FROM head), signature, made FROM heads",
    "INSERT INTO heads SELECT 7, key, hash, signature, made FROM heads",
    "UPDATE origins SET seq = 0",
    "DELETE FROM origins",
    "REPLACE INTO origins SELECT * FROM origins",
};

/// What only the book's own connection can refuse.
constexpr const char* kRefusedInside[] = {
    "UPDATE pours SET closed = 1",
    "INSERT INTO pour_days VALUES (1, 'N1')",
    "INSERT INTO pour_boots VALUES ('N1', 'another', 1)",
    "INSERT INTO origins VALUES ('other', 0, 0, 'OTHER', zeroblob(32))",
    "DROP TABLE events",
    "DROP TRIGGER events_never_go",
    "DROP INDEX events_of_pour",
    "ALTER TABLE events RENAME TO old_events",
    "ALTER TABLE events ADD COLUMN more TEXT",
    "ALTER TABLE events DROP COLUMN boot",
    "CREATE TABLE other (x)",
    "CREATE TRIGGER quiet AFTER INSERT ON events BEGIN SELECT 1; END",
    "CREATE TEMP TRIGGER quiet BEFORE INSERT ON events BEGIN SELECT RAISE(IGNORE); END",
    "CREATE TEMP TABLE events (seq)",
    "ATTACH ':memory:' AS other",
    "PRAGMA writable_schema = ON",
    "PRAGMA recursive_triggers = OFF",
    "PRAGMA ignore_check_constraints = ON",
    "PRAGMA synchronous = OFF",
    "PRAGMA journal_mode = OFF",
    "PRAGMA user_version = 0",
    "PRAGMA application_id = 0",
    "REINDEX",
    "ANALYZE",
    "UPDATE sqlite_schema SET sql = ''",
};

fs::path three_events(const Folder& folder) {
  auto path = folder / "book.risebook";
  auto book = book_with_pour(path);
  got(book.append(PourId{"N1"}, note("one"), entry_at(1)));
  got(book.append(PourId{"N1"}, note("two"), entry_at(2)));
  SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);  // so that nothing is refused for
  bare.exec(                                                     // want of a row
      "INSERT INTO keys VALUES (randomblob(32), 5);"
      "INSERT INTO heads SELECT seq, key, hash, zeroblob(64), 6 FROM events, keys WHERE seq = 2;"
      "INSERT INTO origins VALUES ('an older book', 4, 5, 'OLDER', zeroblob(32))");
  return path;
}

/// What verify finds beyond the signatures, which nobody made.
std::vector<std::string> faults_of(const fs::path& path) {
  auto faults = got(got(Logbook::open(path, Access::read)).verify()).faults;
  std::erase_if(faults, [](const std::string& fault) {
    return fault.find("The signature of the head") == 0;
  });
  return faults;
}

std::vector<Event> events_of(const fs::path& path) {
  return got(got(Logbook::open(path, Access::read)).events(PourId{"N1"}));
}

}  // namespace

TEST_CASE("any program that opens the book is refused a change to what it holds") {
  const Folder folder;
  const auto path = three_events(folder);
  const auto before = events_of(path);
  for (const char* recursive :
       {"PRAGMA recursive_triggers = OFF", "PRAGMA recursive_triggers = ON"}) {
    SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
    bare.exec(recursive);
    for (const char* sql : kRefusedEverywhere) {
      CAPTURE(std::string(recursive));
      CAPTURE(std::string(sql));
      CHECK_THROWS_AS(bare.exec(sql), SQLite::Exception);
      CHECK(events_of(path) == before);
    }
  }
  CHECK_MESSAGE(faults_of(path).empty(), fmt::format("{}", fmt::join(faults_of(path), "\n")));
}

TEST_CASE("the book's own connection adds events and can do nothing else") {
  const Folder folder;
  const auto path = three_events(folder);
  const auto before = events_of(path);
  {
    const auto own = got(store::connect(path, Access::write));
    for (const char* sql : kRefusedEverywhere) {
      CAPTURE(std::string(sql));
      CHECK_THROWS_AS(own->exec(sql), SQLite::Exception);
    }
    for (const char* sql : kRefusedInside) {
      CAPTURE(std::string(sql));
      CHECK_THROWS_AS(own->exec(sql), SQLite::Exception);
    }
    own->exec("INSERT INTO keys VALUES (randomblob(32), 7)");
    own->exec(
        "INSERT INTO heads SELECT events.seq, key, events.hash, zeroblob(64), 8 "
        "FROM events, keys WHERE seq = 3");
  }
  CHECK(events_of(path) == before);
  CHECK_MESSAGE(faults_of(path).empty(), fmt::format("{}", fmt::join(faults_of(path), "\n")));
}

TEST_CASE("a book open for reading cannot be written") {
  const Folder folder;
  const auto path = three_events(folder);
  const auto own = got(store::connect(path, Access::read));
  CHECK_THROWS_AS(own->exec("INSERT INTO events SELECT * FROM events"), SQLite::Exception);
  auto book = got(Logbook::open(path, Access::read));
  CHECK_FALSE(book.writable());
  const auto kept = book.append(PourId{"N1"}, note("three"), entry_at(3));
  REQUIRE_FALSE(kept);
  CHECK(kept.error().kind == Error::Kind::book);
  CHECK(to_text(kept.error()).find("NOT kept") != std::string::npos);
  CHECK_FALSE(book.append_script(script("N2"), entry_at(3)));
}
