// The pour the other tests spoil: nothing is found in it, live or finished.
#include <doctest/doctest.h>

#include "../pour_text.h"

using namespace rb;
using namespace rb::test;

TEST_CASE("nothing is found in a pour that keeps every limit") {
  const Checked seen = good_pour().checked();
  INFO(to_text(seen.state, seen.report));
  CHECK(seen.report.findings.empty());
  CHECK(seen.report.clean());
}

TEST_CASE("nothing is found at any moment of a pour that keeps every limit") {
  for (const double now : {0.,    90.,   510.,  600.,  1000., 1500., 1550., 1600., 2399., 2400.,
                           3000., 3350., 3400., 4200., 5150., 5200., 5300., 5450., 5600., 7000.}) {
    const Checked seen = good_pour().live(now);
    CAPTURE(now);
    INFO(to_text(seen.state, seen.report));
    const auto found = seen.rules();
    if (now >= 5400 && now < 5600) {  // closed and waiting for its second signature
      CHECK(found == std::vector<std::string>{"unsigned"});
    } else {
      CHECK(found.empty());
    }
  }
}
