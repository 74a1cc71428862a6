#include "screens/words/say.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

TEST_CASE("a height reads in metres to the centimetre, or in feet and inches to the half inch") {
  const Say si{Language{}, Units::si, {}};
  CHECK(si.height(metres(1.353)) == "1.35 m");
  CHECK(si.height_bare(metres(0)) == "0.00");
  const Say us{Language{}, Units::us, {}};
  CHECK(us.height(feet(4) + inches(5.5)) == "4\u2032 5\u00BD\u2033");
  CHECK(us.height(feet(12)) == "12\u2032 0\u2033");
  CHECK(us.height(inches(0.5)) == "0\u2032 \u00BD\u2033");
  CHECK(us.height(inches(11.8)) == "1\u2032 0\u2033");  // rounds up into the next foot
}

TEST_CASE("pressure, rise and temperature carry their units") {
  const Say si{Language{}, Units::si, {}};
  const Say us{Language{}, Units::us, {}};
  CHECK(si.pressure(kilopascals(41.6)) == "42 kPa");
  // 1 kPa = 20.885 psf (NIST SP 811: 1 psf = 47.88026 Pa).
  CHECK(us.pressure(kilopascals(41.6)) == "869 psf");
  CHECK(si.rise(metres_per_hour(1.84)) == "1.8 m/h");
  CHECK(us.rise(metres_per_hour(1.8288)) == "6.0 ft/h");
  CHECK(si.temperature(celsius(21)) == "21 \u00B0C");
  CHECK(us.temperature(celsius(21)) == "70 \u00B0F");
}

TEST_CASE("a timer never shows a second that has not passed") {
  CHECK(timer(seconds(0)) == "0:00");
  CHECK(timer(seconds(59.99)) == "0:59");
  CHECK(timer(seconds(105)) == "1:45");
  CHECK(timer(seconds(3723)) == "1:02:03");
  CHECK(timer(seconds(-4)) == "0:00");
  CHECK(whole_seconds(seconds(0.01)) == 1);
  CHECK(whole_seconds(seconds(29.5)) == 30);
}

TEST_CASE("figures of findings read in the user's units") {
  const Say us{Language{}, Units::us, {}};
  CHECK(us.amount(share(0.034)) == "3.4\u00A0%");
  CHECK(us.amount(amount(seconds(75))) == "75 s");
  CHECK(us.amount(amount(seconds(5400))) == "1 h 30 min");
  CHECK(us.amount(amount(cubic_metres(0.764554857984))) == "1.00\u00A0yd\u00B3");
}

TEST_CASE("times are told by the site's clock") {
  const Say say{Language{}, Units::si, std::chrono::minutes{120}};
  const Moment at = *parse_moment("2026-03-02T23:10:05.000Z");
  CHECK(say.clock(at) == "01:10:05");
  CHECK(say.clock_short(at) == "01:10");
  CHECK(say.day(at) == "2026-03-03");
}
