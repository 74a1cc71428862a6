// Days of the system's time zone, asked of the zone database: the changes of clocks in Spain in
// 2026 fall on 29 March and 25 October (Directive 2000/84/EC: the last Sunday of the month).
#include <doctest/doctest.h>

#include <cstdlib>
#include <ctime>
#include <string>

#include "app/local_time.h"

using namespace rb;

namespace {

class InZone {
 public:
  explicit InZone(const char* zone) {
    if (const char* was = std::getenv("TZ")) was_ = was;
    setenv("TZ", zone, 1);
    tzset();
  }
  ~InZone() {
    if (was_) {
      setenv("TZ", was_->c_str(), 1);
    } else {
      unsetenv("TZ");
    }
    tzset();
  }
  InZone(const InZone&) = delete;
  InZone& operator=(const InZone&) = delete;

 private:
  std::optional<std::string> was_;
};

LocalDay got(const char* text) {
  const auto day = system_day(text);
  REQUIRE(day);
  return *day;
}

}  // namespace

TEST_CASE("days are 23, 24 and 25 hours long, and one begins where the other ends") {
  const InZone madrid{"Europe/Madrid"};
  const LocalDay spring = got("2026-03-29");
  CHECK(spring.end - spring.start == std::chrono::hours{23});
  CHECK(spring.utc_offset == std::chrono::minutes{60});
  CHECK(spring.utc_offset_end == std::chrono::minutes{120});
  CHECK(spring.start == *parse_moment("2026-03-28T23:00:00Z"));
  const LocalDay autumn = got("2026-10-25");
  CHECK(autumn.end - autumn.start == std::chrono::hours{25});
  CHECK(autumn.start == *parse_moment("2026-10-24T22:00:00Z"));
  CHECK(got("2026-03-28").end == spring.start);
  CHECK(got("2026-03-30").start == spring.end);
  CHECK(got("2026-10-26").start == autumn.end);
  CHECK(got("2026-06-01").end - got("2026-06-01").start == std::chrono::hours{24});
}

TEST_CASE("a zone behind UTC has its days too, and other text is none") {
  const InZone york{"America/New_York"};
  const LocalDay day = got("2026-03-08");
  CHECK(day.start == *parse_moment("2026-03-08T05:00:00Z"));
  CHECK(day.end - day.start == std::chrono::hours{23});
  CHECK_FALSE(system_day("8 March"));
  CHECK_FALSE(system_day(""));
}
