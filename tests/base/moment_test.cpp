#include "base/moment.h"

#include <doctest/doctest.h>

using namespace rb;

TEST_CASE("a moment reads and writes RFC 3339 to the millisecond") {
  // The example times of RFC 3339 section 5.8.
  const auto fraction = parse_moment("1985-04-12T23:20:50.52Z");
  REQUIRE(fraction);
  CHECK(to_text(*fraction) == "1985-04-12T23:20:50.520Z");
  const auto offset = parse_moment("1996-12-19T16:39:57-08:00");
  REQUIRE(offset);
  CHECK(to_text(*offset) == "1996-12-20T00:39:57.000Z");
}

TEST_CASE("text that is not RFC 3339 is no moment") {
  for (const char* bad :
       {"", "2026-03-02", "2026-03-02T05:10Z", "2026-13-02T05:10:00Z", "2026-02-30T05:10:00Z",
        "2026-03-02T05:10:00", "2026-03-02T05:10:00.Z", "2026-03-02T25:10:00Z",
        "2026-03-02T05:10:00+2:00", "NaN", "2026-03-02T05:10:00Zx", "2026-03-02 05:10:00Z"}) {
    CAPTURE(bad);
    CHECK_FALSE(parse_moment(bad));
  }
}

TEST_CASE("a day starts at midnight where the site is") {
  const auto start = parse_day("2026-03-02", std::chrono::hours{2});
  REQUIRE(start);
  CHECK(to_text(*start) == "2026-03-01T22:00:00.000Z");
  CHECK(day_text(*start, std::chrono::hours{2}) == "2026-03-02");
  CHECK_FALSE(parse_day("2026-3-2"));
}
