// The clock is asked about once a day, before anything is tapped.
#include "app/clock_asker.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace std::chrono_literals;

namespace {
Moment at(const char* text) {
  return *parse_moment(text);
}
}  // namespace

TEST_CASE("a clock said to be right is not asked about again that day, but is the next") {
  ClockAsker asker{at("2026-11-01T00:00:00.000Z"), at("2026-11-20T12:00:00.000Z"), -5h};
  const Moment odd = at("2026-11-10T12:00:00.000Z");
  const auto first = asker.question(odd);
  REQUIRE(first);
  CHECK(first->doubt == screens::ClockDoubt::behind_book);
  CHECK(asker.question(odd));  // not answered yet
  asker.answered(odd);
  CHECK_FALSE(asker.question(odd));
  CHECK_FALSE(asker.question(at("2026-11-11T04:59:00.000Z")));  // the same day on the site
  CHECK(asker.question(at("2026-11-11T05:00:00.000Z")));
}

TEST_CASE("a clock that looks right is not asked about") {
  const ClockAsker asker{at("2026-11-01T00:00:00.000Z"), at("2026-11-20T12:00:00.000Z"), 0min};
  CHECK_FALSE(asker.question(at("2026-11-20T12:00:01.000Z")));
  const ClockAsker empty{at("2026-11-01T00:00:00.000Z"), std::nullopt, 0min};
  CHECK_FALSE(empty.question(at("2026-11-01T00:00:00.000Z")));
  CHECK(empty.question(at("1970-01-01T00:00:00.000Z")));
}

TEST_CASE("the program knows the day it was made") {
  CHECK(program_made() > at("2026-01-01T00:00:00.000Z"));
  CHECK(program_made() <= std::chrono::system_clock::now());
}
