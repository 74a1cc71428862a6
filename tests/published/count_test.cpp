#include <doctest/doctest.h>

#include <map>
#include <set>

#include "published.h"

using namespace rb::published;

TEST_CASE("at least 80 values read in at least 10 publications are computed alike") {
  std::map<Mark, int> values;
  int worked_out = 0;
  std::set<std::string> publications;
  for (const Maker maker : enlisted()) {
    for (const Sheet& sheet : maker()) {
      for (const Row& row : sheet.rows) {
        if (!agrees(row)) continue;
        ++values[sheet.mark];
        if (sheet.mark == Mark::read && sheet.kind == Kind::worked_out) ++worked_out;
        if (sheet.mark == Mark::read) publications.insert(sheet.publication);
      }
    }
  }
  INFO("read " << values[Mark::read] << " (of which worked out by our formulas " << worked_out
               << "), memory " << values[Mark::memory] << ", computed " << values[Mark::computed]
               << ", publications read " << publications.size());
  CHECK(worked_out >= 80);
  CHECK(publications.size() >= 10);
}

TEST_CASE("a row that is off, or has no number, does not count as agreeing") {
  CHECK(agrees({"", 1.0, 1.1, 0.11}));
  CHECK_FALSE(agrees({"", 1.0, 1.1, 0.09}));
  CHECK_FALSE(agrees({"", std::numeric_limits<double>::quiet_NaN(), 1.0, 10.0}));
}
