#include "screens/entry/number_pad.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {
std::string typed(const std::string& keys, Units units) {
  std::string text;
  for (const char key : keys) press_key(text, key, units);
  return text;
}
double metres_of(const std::string& text, Units units) {
  const auto height = typed_height(text, units);
  return height ? in_metres(*height) : -1;
}
}  // namespace

TEST_CASE("metres are typed with one point") {
  CHECK(typed("135", Units::si) == "135");
  CHECK(typed("1.35", Units::si) == "1.35");
  CHECK(typed("1..3.5", Units::si) == "1.35");
  CHECK(typed(".6", Units::si) == "0.6");
  CHECK(typed("007", Units::si) == "7");
  CHECK(typed("1.3<<", Units::si) == "1");
  CHECK(typed("<", Units::si).empty());
  CHECK(typed("123456789", Units::si).size() == 6);
  CHECK(metres_of("1.35", Units::si) == doctest::Approx(1.35));
  CHECK(metres_of("1.", Units::si) == doctest::Approx(1));
  CHECK(metres_of("", Units::si) == -1);
}

TEST_CASE("feet and inches are typed with one foot mark") {
  CHECK(typed("14'6", Units::us) == "14'6");
  CHECK(typed("'6", Units::us) == "0'6");
  CHECK(typed("14''6.", Units::us) == "14'6");
  CHECK(metres_of("14'6", Units::us) == doctest::Approx(14.5 * 0.3048));
  CHECK(metres_of("14'", Units::us) == doctest::Approx(14 * 0.3048));
  CHECK(metres_of("14", Units::us) == doctest::Approx(14 * 0.3048));
}
