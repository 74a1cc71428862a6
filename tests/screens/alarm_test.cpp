#include "screens/alarm.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::screens;

namespace {
Finding finding(const char* rule, Weight weight, std::size_t row, double measured = 1) {
  Finding f;
  f.rule = rule;
  f.weight = weight;
  f.element = 0;
  f.row = row;
  f.measured = measured;
  return f;
}
const PourId kPour{"P1"};
}  // namespace

TEST_CASE("what stood when a pour was first looked at sounds nothing") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {finding("head-high", Weight::stop, 0)}));
  CHECK_FALSE(alarm.hear(kPour, {finding("head-high", Weight::stop, 0)}));
  CHECK_FALSE(alarm.hear(PourId{"P2"}, {finding("row-missed", Weight::mend, 1)}));
}

TEST_CASE("a finding sounds once, as long as it stands, whatever its figure becomes") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {}));
  CHECK(alarm.hear(kPour, {finding("rise-fast", Weight::stop, 0, 4.1)}) == Weight::stop);
  CHECK_FALSE(alarm.hear(kPour, {finding("rise-fast", Weight::stop, 0, 4.2)}));
  CHECK_FALSE(alarm.hear(kPour, {}));
  CHECK(alarm.hear(kPour, {finding("rise-fast", Weight::stop, 0)}) == Weight::stop);
}

TEST_CASE("of several new findings the gravest sounds; notes are silent") {
  Alarm alarm;
  CHECK_FALSE(alarm.hear(kPour, {}));
  CHECK_FALSE(alarm.hear(kPour, {finding("run-long", Weight::note, 0)}));
  CHECK(alarm.hear(kPour, {finding("run-short", Weight::mend, 0)}) == Weight::mend);
  CHECK(alarm.hear(kPour,
                   {finding("run-short", Weight::mend, 0), finding("run-short", Weight::mend, 1),
                    finding("head-high", Weight::stop, 2)}) == Weight::stop);
}
