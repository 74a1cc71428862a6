// Tries of a PIN slow down, and a restart clears nothing.
#include <doctest/doctest.h>

#include "sign/tries.h"

using namespace rb;
using sign::Tries;
using sign::TriesList;

namespace {

const Moment kNow = *parse_moment("2026-03-02T05:00:00.000Z");
Moment later(double s) {
  return after(kNow, seconds(s));
}
const Hex kKey{std::string(64, 'a')}, kOther{std::string(64, 'b')};

double wait(int wrong, double since = 0) {
  return in_seconds(sign::wait_left({wrong, kNow}, later(since)));
}

}  // namespace

TEST_CASE("three wrong tries are free, each later one costs twice the wait, an hour at most") {
  CHECK(wait(0) == 0);
  CHECK(wait(2) == 0);
  CHECK(wait(3) == 30);
  CHECK(wait(4) == 60);
  CHECK(wait(5) == 120);
  CHECK(wait(9) == 1920);
  CHECK(wait(10) == 3600);
  CHECK(wait(1000) == 3600);
  CHECK(wait(4, 59) == 1);
  CHECK(wait(4, 60) <= 0);
  CHECK(wait(4, -100) == 60);  // the clock was set back: from anew
}

TEST_CASE("tries are counted by key, and cleared by the right PIN") {
  TriesList list;
  for (int i = 0; i < 4; ++i) list.add(kKey, later(i));
  CHECK(list.of(kKey) == Tries{4, later(3)});
  CHECK(list.of(kOther) == Tries{});
  list.clear(kKey);
  CHECK(list.of(kKey) == Tries{});
}

TEST_CASE("the list reads back as it was written") {
  TriesList list;
  list.add(kKey, kNow);
  list.add(kKey, later(5));
  list.add(kOther, later(7));
  CHECK(TriesList::read(list.text(), later(9)) == list);
  CHECK(TriesList::read("", kNow) == TriesList{});
}

TEST_CASE("a list that does not read lets nobody try at once") {
  TriesList list;
  list.add(kKey, kNow);
  std::string text = list.text();
  for (const std::string& bad : {std::string{"?"}, text.substr(0, 12), text + "x\n",
                                 text + "0 2026-03-02T05:00:00Z aa\n", text + "1 yesterday aa\n"}) {
    CAPTURE(bad);
    const TriesList read = TriesList::read(bad, kNow);
    CHECK(sign::wait_left(read.of(kOther), kNow) == Seconds{30});
    CHECK(sign::wait_left(read.of(kOther), later(31)) <= Seconds{0});
  }
}
