// A script goes into the book whole or not at all.
#include <doctest/doctest.h>

#include "pour/log/event.h"
#include "samples.h"

using namespace rb;
using namespace rb::samples;

TEST_CASE("a script's events get the book's ids and its targets follow") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook", "earlier");
  const auto kept = got(book.append_script(script("N1"), entry_at(500)));
  REQUIRE(kept.size() == 10);
  for (std::size_t i = 0; i < kept.size(); ++i) {
    CHECK(kept[i].id.text == book.tag() + "-" + std::to_string(i + 2));
  }
  CHECK(std::get<event::Fix>(kept[3].what).target == kept[2].id);
  CHECK(std::get<event::Strike>(kept[5].what).target == kept[4].id);
  CHECK(std::get<event::Repair>(kept[8].what).target == kept[6].id);
  const auto& fix = std::get<event::Fix>(kept[9].what);
  CHECK(fix.target == kept[8].id);
  CHECK(fix.set == R"({"note":"rubbed","target":")" + kept[7].id.text + "\"}");
  CHECK(got(book.events(PourId{"N1"})) == kept);
}

TEST_CASE("a line keeps an entry of its own; the others get the given one") {
  const Folder folder;
  auto book = got(Logbook::create(folder / "book.risebook"));
  const auto kept = got(book.append_script(script("N1"), entry_at(500)));
  CHECK(kept[4].entry ==
        Entry{*parse_moment("2026-03-02T06:00:00.000Z"), seconds(12.5), "another"});
  CHECK(kept[3].entry == entry_at(500));
  CHECK(got(book.events(PourId{"N1"})) == kept);
}

TEST_CASE("a script whose pour is in the book is refused whole") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook", "N1");
  const auto head = got(book.head_hash());
  const auto twice = book.append_script(script("N1"), entry_at(500));
  REQUIRE_FALSE(twice);
  CHECK(twice.error().kind == Error::Kind::input);
  CHECK(to_text(twice.error()).find("already in the book") != std::string::npos);
  CHECK(got(book.head_hash()) == head);
}

TEST_CASE("a script with one bad event leaves nothing") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook", "earlier");
  const auto head = got(book.head_hash());
  auto bad = script("N1");
  SUBCASE("a target that no line before it has") {
    bad.events.push_back(happening(event::Strike{EventId{"nobody"}, "why"}));
  }
  SUBCASE("a fix that sets a target no line before it has") {
    bad.events.push_back(happening(event::Fix{EventId{"g"}, R"({"target":"nobody"})", "why"}));
  }
  SUBCASE("a height that is no number") {
    bad.events.push_back(happening(
        event::Top{ElementId{"W1"}, metres(std::numeric_limits<double>::infinity()), {}}));
  }
  SUBCASE("a second opening") {
    bad.events.push_back(open_event("N1"));
  }
  SUBCASE("an opening of another pour") {
    bad.pour = PourId{"N2"};
  }
  SUBCASE("no opening") {
    bad.events.erase(bad.events.begin());
  }
  const auto kept = book.append_script(bad, entry_at(500));
  REQUIRE_FALSE(kept);
  CHECK(kept.error().kind == Error::Kind::input);
  CHECK(got(book.head_hash()) == head);
  CHECK(got(book.events(PourId{"N1"})).empty());
  CHECK(got(book.pours()).size() == 1);
  CHECK(got(book.verify()).sound());
  got(book.append_script(script("N1"), entry_at(500)));  // and the good one still goes in
}

TEST_CASE("a pour carried to another book as a script reads the same but for its ids") {
  const Folder folder;
  auto one = got(Logbook::create(folder / "one.risebook"));
  auto two = book_with_pour(folder / "two.risebook", "earlier");
  const auto kept = got(one.append_script(script("N1"), entry_at(500)));
  const auto carried =
      got(two.append_script(got(read_script(write_script(kept), "carried.jsonl")), entry_at(900)));
  REQUIRE(carried.size() == kept.size());
  for (std::size_t i = 0; i < kept.size(); ++i) {
    CHECK(carried[i].at == kept[i].at);
    CHECK(carried[i].entry == kept[i].entry);
    CHECK(carried[i].what.index() == kept[i].what.index());
  }
  CHECK(std::get<event::Repair>(carried[8].what).target == carried[6].id);
}
