// Pours and days are found by their marks, without reading the events of others.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/log/event.h"
#include "samples.h"
#include "store/file/chain.h"

using namespace rb;
using namespace rb::samples;

namespace {

Event opened_at(const std::string& pour, Moment at, const std::string& name = "Test wall") {
  auto line = open_line(pour);
  line.replace(line.find("Test wall"), 9, name);
  auto event = event_of(line);
  event.at = at;
  return event;
}

Event at(Event event, Moment moment) {
  event.at = moment;
  return event;
}

Entry entered(Moment wall, double steady, const char* boot = "a-start") {
  return {wall, seconds(steady), boot};
}

Moment day(int number) {
  return *parse_moment("2026-03-02T05:00:00.000Z") + std::chrono::hours{24 * number};
}

std::vector<PourId> on(const Logbook& book, int number) {
  const auto from = std::chrono::floor<std::chrono::days>(day(number));
  return got(book.pours_in({from, from + std::chrono::hours{24}}));
}

bool holds(const std::vector<PourId>& pours, const char* pour) {
  return std::find(pours.begin(), pours.end(), PourId{pour}) != pours.end();
}

std::vector<std::string> names(const PourPage& page) {
  std::vector<std::string> all;
  for (const auto& mark : page.pours) all.push_back(mark.pour.text);
  return all;
}

}  // namespace

TEST_CASE("pours are listed open ones first, the latest first, by page") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  for (int i = 0; i < 7; ++i) {
    const auto pour = fmt::format("P{}", i);
    got(book.append(PourId{pour}, opened_at(pour, day(i)), entered(day(i), 100 * i)));
  }
  for (const char* pour : {"P6", "P2"}) {
    got(book.append(PourId{pour}, at(happening(event::PourClose{}), day(7)), entered(day(7), 900)));
  }
  const auto page = got(book.pours(PourQuery{.first = 0, .count = 4}));
  CHECK(page.all == 7);
  CHECK(names(page) == std::vector<std::string>{"P5", "P4", "P3", "P1"});
  CHECK(names(got(book.pours(PourQuery{.first = 4, .count = 4}))) ==
        std::vector<std::string>{"P0", "P6", "P2"});
  CHECK(got(book.pours(PourQuery{.first = 7})).pours.empty());
  CHECK(page.pours[0].opened == day(5));
  CHECK(page.pours[0].first == 6);
  CHECK(page.pours[0].last == 6);
  CHECK(got(book.mark(PourId{"P6"}))->closed == PourMark::Closed::yes);
  CHECK(got(book.mark(PourId{"P6"}))->last == 8);
  CHECK_FALSE(got(book.mark(PourId{"P9"})));
}

TEST_CASE("a list is searched by name, site and id, whatever the capitals, wildcards are letters") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  const char* const called[] = {"North wall", "Core 50%", "core_2", "Pier"};
  for (int i = 0; i < 4; ++i) {
    const auto pour = fmt::format("P{}", i);
    got(book.append(PourId{pour}, opened_at(pour, day(i), called[i]), entered(day(i), 1)));
  }
  const auto found = [&](const char* text) {
    return names(got(book.pours(PourQuery{.text = text})));
  };
  CHECK(found("CORE") == std::vector<std::string>{"P2", "P1"});
  CHECK(found("50%") == std::vector<std::string>{"P1"});
  CHECK(found("_") == std::vector<std::string>{"P2"});
  CHECK(found("p3") == std::vector<std::string>{"P3"});
  CHECK(found("yard").size() == 4);
  CHECK(found("nothing of it").empty());
  CHECK(got(book.pours(PourQuery{.text = "core"})).all == 2);
}

TEST_CASE("a name that was corrected is shown as corrected and found by both") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  const auto open =
      got(book.append(PourId{"P"}, opened_at("P", day(0), "Nroth"), entered(day(0), 1)));
  got(book.append(PourId{"P"},
                  happening(event::Fix{open.id, R"({"plan":{"name":"North"}})", "misspelt"}),
                  entered(day(0), 2)));
  CHECK(got(book.mark(PourId{"P"}))->name == "North");
  CHECK(got(book.pours(PourQuery{.text = "nroth"})).all == 1);
  CHECK(got(book.pours(PourQuery{.text = "north"})).all == 1);
  CHECK(got(book.verify()).sound());
}

TEST_CASE("a day finds the pours with an event on it, told, corrected, or by a clock put right") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  got(book.append(PourId{"A"}, opened_at("A", day(0)), entered(day(0), 100)));
  got(book.append(PourId{"A"}, at(note("later"), day(3)), entered(day(3), 100 + 3 * 86400)));
  got(book.append(PourId{"B"}, opened_at("B", day(10)), entered(day(10), 100, "b")));
  CHECK(on(book, 0) == std::vector<PourId>{PourId{"A"}});
  CHECK(on(book, 3) == std::vector<PourId>{PourId{"A"}});
  CHECK(on(book, 6).empty());
  CHECK(on(book, 10) == std::vector<PourId>{PourId{"B"}});
  // A correction moves an event to a day of its own.
  const auto wrong =
      got(book.append(PourId{"B"}, at(note("x"), day(10)), entered(day(10), 200, "b")));
  got(book.append(
      PourId{"B"},
      at(happening(event::Fix{wrong.id, R"({"at":"2026-03-22T05:00:00.000Z"})", "date"}), day(10)),
      entered(day(10), 300, "b")));
  CHECK(holds(on(book, 20), "B"));
  // The wall clock falls back to 1970 in the middle of the pour: fold() takes the step out.
  const Moment epoch{std::chrono::hours{5}};
  got(book.append(PourId{"B"}, at(note("after the step"), epoch),
                  entered(epoch, 100 + 5 * 86400, "b")));
  CHECK(holds(on(book, 15), "B"));
  CHECK(got(book.verify()).sound());
}

TEST_CASE("an ordinary tap writes three pages and its marks none") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  auto book = book_with_pour(path);
  for (int i = 1; i < 30; ++i) got(book.append(PourId{"N1"}, note("tap"), entry_at(i)));
  REQUIRE(book.empty_log());
  const auto frames = [&] { return (fs::file_size(path.string() + "-wal") - 32) / (4096 + 24); };
  got(book.append(PourId{"N1"}, note("tap"), entry_at(31)));
  const auto one = frames();
  got(book.append(PourId{"N1"}, note("tap"), entry_at(32)));
  CHECK(one == 3);  // events, their index, the head
  CHECK(frames() == 6);
}

TEST_CASE("marks that do not tell what the events do are found") {
  struct Wrong {
    const char* sql;
    const char* words;
  };
  for (const auto& each : {
           Wrong{"DELETE FROM pours", "does not tell its first event"},
           Wrong{"DELETE FROM pour_days", "day of pour N1 is not marked"},
           Wrong{"DELETE FROM pour_boots", "start of the tablet"},
           Wrong{"UPDATE pours SET closed = 1", "being closed"},
           Wrong{"UPDATE pours SET name = 'other'", "name, site and opening"},
           Wrong{"UPDATE pours SET opened = 5", "name, site and opening"},
           Wrong{"INSERT INTO pours VALUES ('made up', 1, '', '', '', 0, 0)",
                 "no event in the book"},
       }) {
    CAPTURE(std::string(each.sql));
    const Folder folder;
    const auto path = folder / "book.risebook";
    book_with_pour(path);
    {
      SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
      std::vector<std::string> put_back;
      SQLite::Statement triggers(bare,
                                 "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
      std::vector<std::string> drop;
      while (triggers.executeStep()) {
        drop.push_back("DROP TRIGGER " + triggers.getColumn(0).getString());
        put_back.push_back(triggers.getColumn(1).getString());
      }
      triggers.reset();
      for (const auto& one : drop) bare.exec(one);
      bare.exec(each.sql);
      for (const auto& one : put_back) bare.exec(one);
    }
    const auto report = got(got(Logbook::open(path, Access::read)).verify());
    REQUIRE_FALSE(report.sound());
    CHECK(report.faults.front().find(each.words) != std::string::npos);
  }
}

TEST_CASE("an event of a kind this program does not know is kept, set aside and no fault") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  std::string tag;
  {
    auto book = book_with_pour(path);
    tag = book.tag();
  }
  {  // as a newer program would
    SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
    SQLite::Statement last(bare, "SELECT seq, hash FROM head");
    REQUIRE(last.executeStep());
    store::Row row{.seq = 2,
                   .pour = "N1",
                   .id = tag + "-2",
                   .line = R"({"at":"2026-03-02T06:00:00.000Z","by":"fm","do":"drone-look"})",
                   .entered = 5,
                   .steady = 6,
                   .boot = "b",
                   .kept = 7};
    std::copy_n(static_cast<const unsigned char*>(last.getColumn(1).getBlob()), 32,
                row.previous.begin());
    last.reset();
    const auto hash = store::hash_of(row);
    SQLite::Statement insert(bare, "INSERT INTO events VALUES (2, 'N1', ?, ?, 5, 6, 'b', 7, ?, ?)");
    insert.bind(1, row.id);
    insert.bind(2, row.line);
    insert.bind(3, row.previous.data(), 32);
    insert.bind(4, hash.data(), 32);
    insert.exec();
  }
  auto book = got(Logbook::open(path, Access::write));
  REQUIRE(book.writable());
  got(book.append(PourId{"N1"}, note("goes on"), entry_at(2)));
  const auto read = got(book.read(PourId{"N1"}));
  CHECK(read.events.size() == 2);
  CHECK(read.damaged.empty());
  REQUIRE(read.set_aside.size() == 1);
  CHECK(read.set_aside[0].kind == "drone-look");
  CHECK(read.set_aside[0].id.text == tag + "-2");
  CHECK(got(book.events(PourId{"N1"})).size() == 2);
  const auto report = got(book.verify());
  CHECK(report.sound());
  CHECK(report.unknown == 1);
  CHECK(got(book.verify({PourId{"N1"}})).sound());
}
