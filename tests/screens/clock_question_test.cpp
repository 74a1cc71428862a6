// Which clocks are asked about: just below, at and just above each bound.
#include "screens/book/clock_question.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {

const Moment kMade = *parse_moment("2026-11-01T00:00:00.000Z");
const Moment kEntry = *parse_moment("2027-03-02T12:00:00.000Z");
constexpr Seconds kInstant{0.001};

ClockDoubt doubt(Moment now, std::optional<Moment> entry = std::nullopt) {
  return doubt_of_clock(now, kMade, entry).doubt;
}

}  // namespace

TEST_CASE("a clock before the program was made is asked about, whatever the book says") {
  CHECK(doubt(*parse_moment("1969-12-31T23:59:00.000Z")) == ClockDoubt::before_build);
  CHECK(doubt(after(kMade, -kInstant)) == ClockDoubt::before_build);
  CHECK(doubt(kMade) == ClockDoubt::none);
  CHECK(doubt(*parse_moment("1969-12-31T23:59:00.000Z"), kEntry) == ClockDoubt::before_build);
  CHECK(doubt_of_clock(after(kMade, -kInstant), kMade, kEntry).against == kMade);
}

TEST_CASE("a clock more than a day before the book's last entry is asked about") {
  CHECK(doubt(after(kEntry, -kClockBehindBook - kInstant), kEntry) == ClockDoubt::behind_book);
  CHECK(doubt(after(kEntry, -kClockBehindBook), kEntry) == ClockDoubt::none);
  CHECK(doubt(kEntry, kEntry) == ClockDoubt::none);
}

TEST_CASE("a clock more than two years after the book's last entry is asked about") {
  CHECK(doubt(after(kEntry, kClockAheadOfBook), kEntry) == ClockDoubt::none);
  CHECK(doubt(after(kEntry, kClockAheadOfBook + kInstant), kEntry) == ClockDoubt::ahead_of_book);
}

TEST_CASE("a clock of 2090 is asked about in an empty book too") {
  CHECK(doubt(*parse_moment("2090-01-01T00:00:00.000Z")) == ClockDoubt::far_ahead);
  CHECK(doubt(after(kMade, kClockFarAhead)) == ClockDoubt::none);
  CHECK(doubt(after(kMade, kClockFarAhead + kInstant)) == ClockDoubt::far_ahead);
}
