// Events go in, come back, and stay.
#include <doctest/doctest.h>

#include <string>

#include "samples.h"
#include "store/file/entry_now.h"

using namespace rb;
using namespace rb::samples;

TEST_CASE("an event comes back from the book as append gave it") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  const auto kept = got(book.append(PourId{"N1"}, note("slab edge wet"), entry_at(3)));
  CHECK(kept.entry == entry_at(3));
  CHECK(std::get<event::Note>(kept.what).text == "slab edge wet");
  const auto events = got(book.events(PourId{"N1"}));
  REQUIRE(events.size() == 2);
  CHECK(events[1] == kept);
  CHECK(std::holds_alternative<event::PourOpen>(events[0].what));
}

TEST_CASE("event ids are the book's tag and a running number") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  auto given = note("with an id of its own");
  given.id = EventId{"mine"};
  given.entry = Entry{five_past(99), seconds(1), "x"};
  const auto kept = got(book.append(PourId{"N1"}, given, entry_at(1)));
  CHECK(kept.id.text == book.tag() + "-2");
  CHECK(kept.entry == entry_at(1));
  CHECK(book.tag().size() == 5);
  CHECK(book.tag().find_first_not_of("23456789BCDFGHJKMNPQRSTVWXYZ") == std::string::npos);
}

TEST_CASE("two books have different tags and names") {
  const Folder folder;
  const auto one = got(Logbook::create(folder / "1.risebook"));
  const auto two = got(Logbook::create(folder / "2.risebook"));
  CHECK(one.tag() != two.tag());
  CHECK(one.uuid() != two.uuid());
  CHECK(got(one.head_hash()) != got(two.head_hash()));
}

TEST_CASE("events survive closing and opening the book") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  std::vector<Event> before;
  std::string head;
  {
    auto book = book_with_pour(path);
    for (int i = 1; i < 20; ++i) {
      got(book.append(PourId{"N1"}, note("note " + std::to_string(i), i), entry_at(i)));
    }
    before = got(book.events(PourId{"N1"}));
    head = got(book.head_hash());
  }
  auto book = got(Logbook::open(path, Access::write));
  CHECK(got(book.events(PourId{"N1"})) == before);
  CHECK(got(book.head_hash()) == head);
  const auto next = got(book.append(PourId{"N1"}, note("after"), entry_at(30)));
  CHECK(next.id.text == book.tag() + "-21");
  CHECK(got(book.verify()).sound());
}

TEST_CASE("the head hash moves with every event") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  const auto before = got(book.head_hash());
  CHECK(before.size() == 64);
  got(book.append(PourId{"N1"}, note("one"), entry_at(1)));
  CHECK(got(book.head_hash()) != before);
}

TEST_CASE("words in any script come back letter by letter") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook", "Núcleo 3 – 墙 №1");
  const PourId pour{"Núcleo 3 – 墙 №1"};
  const std::string words =
      "hormigón frío, Größe, λ ≤ 0,5 – 混凝土 🧱 \"quoted\" \\ back\ttab\nline";
  got(book.append(pour, note(words), entry_at(1)));
  const auto events = got(book.events(pour));
  REQUIRE(events.size() == 2);
  CHECK(std::get<event::Note>(events[1].what).text == words);
  CHECK(got(book.pours()).at(0).pour == pour);
  CHECK(got(book.verify()).sound());
}

TEST_CASE("fields this version does not know are kept") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  auto event = note("later version");
  event.extra = R"({"weather":{"wind":3.5}})";
  got(book.append(PourId{"N1"}, event, entry_at(1)));
  CHECK(got(book.events(PourId{"N1"})).at(1).extra == event.extra);
}

TEST_CASE("an event that could not be read back is not kept") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  const auto nan = std::numeric_limits<double>::quiet_NaN();
  const auto odd = book.append(
      PourId{"N1"}, happening(event::Top{ElementId{"W1"}, metres(nan), {}}), entry_at(1));
  REQUIRE_FALSE(odd);
  CHECK(odd.error().kind == Error::Kind::input);
  auto no_clock = entry_at(1);
  no_clock.steady = Seconds{nan};
  CHECK_FALSE(book.append(PourId{"N1"}, note("x"), no_clock));
  CHECK(got(book.events(PourId{"N1"})).size() == 1);
  CHECK(got(book.verify()).sound());
}

TEST_CASE("a pour is opened by its first event and only by it") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  const auto early = book.append(PourId{"N1"}, note("too early"), entry_at(0));
  REQUIRE_FALSE(early);
  CHECK(early.error().kind == Error::Kind::input);
  CHECK_FALSE(book.append(PourId{"N2"}, open_event("N1"), entry_at(0)));
  got(book.append(PourId{"N1"}, open_event("N1"), entry_at(0)));
  CHECK_FALSE(book.append(PourId{"N1"}, open_event("N1"), entry_at(1)));
  CHECK(got(book.events(PourId{"N1"})).size() == 1);
}

TEST_CASE("a correction names an event of the same pour") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  got(book.append(PourId{"N2"}, open_event("N2"), entry_at(0)));
  const auto mine = got(book.append(PourId{"N1"}, note("mine"), entry_at(1))).id;
  const auto other = got(book.append(PourId{"N2"}, note("other's"), entry_at(1))).id;
  got(book.append(PourId{"N1"}, happening(event::Strike{mine, "wrong"}), entry_at(2)));
  for (const auto& target : {other, EventId{"none"}, EventId{}}) {
    CAPTURE(target.text);
    CHECK_FALSE(book.append(PourId{"N1"}, happening(event::Strike{target, "wrong"}), entry_at(2)));
    CHECK_FALSE(
        book.append(PourId{"N1"}, happening(event::Fix{target, "{}", "wrong"}), entry_at(2)));
    CHECK_FALSE(book.append(PourId{"N1"}, happening(event::Repair{target, "done"}), entry_at(2)));
  }
}

TEST_CASE("ten thousand events come back in order of entry") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  Script many{PourId{"N1"}, {open_event("N1")}};
  for (int i = 1; i < 10'000; ++i) {
    many.events.push_back(note("note " + std::to_string(i), (i * 7919) % 600));
  }
  {
    auto book = got(Logbook::create(path));
    got(book.append_script(many, entry_at(0)));
  }
  const auto book = got(Logbook::open(path, Access::read));
  const auto events = got(book.events(PourId{"N1"}));
  REQUIRE(events.size() == 10'000);
  for (std::size_t i = 1; i < events.size(); ++i) {
    REQUIRE(std::get<event::Note>(events[i].what).text == "note " + std::to_string(i));
    REQUIRE(events[i].id.text == book.tag() + "-" + std::to_string(i + 1));
  }
  const auto report = got(book.verify());
  CHECK(report.sound());
  CHECK(report.events == 10'000);
}

TEST_CASE("pours are told in the order they came, with their times and whether they are closed") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook", "later by name");
  got(book.append(PourId{"a"}, open_event("a"), entry_at(0)));
  got(book.append(PourId{"a"}, note("x", 90), entry_at(91)));
  got(book.append(PourId{"a"}, note("y", 30), entry_at(92)));
  CHECK(got(book.pours()) ==
        std::vector<PourSummary>{{PourId{"later by name"}, five_past(0), five_past(0), 1, false},
                                 {PourId{"a"}, five_past(0), five_past(90), 3, false}});
  const auto close = got(book.append(PourId{"a"}, happening(event::PourClose{}, 95), entry_at(95)));
  CHECK(got(book.pours()).at(1).closed);
  got(book.append(PourId{"a"}, happening(event::Strike{close.id, "not yet"}, 96), entry_at(96)));
  CHECK_FALSE(got(book.pours()).at(1).closed);
  got(book.append(PourId{"a"}, happening(event::PourClose{}, 97), entry_at(97)));
  CHECK(got(book.pours()).at(1).closed);
  CHECK_FALSE(got(book.pours()).at(0).closed);
}

TEST_CASE("a pour the book does not have has no events") {
  const Folder folder;
  const auto book = book_with_pour(folder / "book.risebook");
  CHECK(got(book.events(PourId{"N7"})).empty());
}

TEST_CASE("the entry of now has both clocks") {
  const auto one = entry_now();
  const auto two = entry_now();
  CHECK(two.steady >= one.steady);
  CHECK(one.steady > seconds(0));
  CHECK(one.boot == two.boot);
  CHECK_FALSE(one.boot.empty());
  const auto now = std::chrono::system_clock::now();
  CHECK(now - two.wall < std::chrono::seconds{5});
}
