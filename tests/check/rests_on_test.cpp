// The taps a finding rests on: those of its place and its load while it came about, and no others.
#include <doctest/doctest.h>

#include <algorithm>

#include "check/review.h"
#include "pour/log/log_entry.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

std::vector<std::string> kinds(const Checked& seen, const Finding& finding) {
  std::vector<std::string> all;
  for (const EventRef ref : taps_behind(seen.state, finding)) {
    all.emplace_back(kind_text(seen.state.log[ref].event.what));
  }
  return all;
}

bool in_order_of_time(const Checked& seen, const Finding& finding) {
  const auto taps = taps_behind(seen.state, finding);
  const bool sorted = std::is_sorted(taps.begin(), taps.end(), [&](EventRef a, EventRef b) {
    return seen.state.log[a].when < seen.state.log[b].when;
  });
  auto once = taps;
  std::sort(once.begin(), once.end());
  return sorted && std::adjacent_find(once.begin(), once.end()) == once.end();
}

}  // namespace

TEST_CASE("a head over the form's rating rests on the run, its rest and how the row hung") {
  PlanText plan{.height = 4, .rows = {full_row("R1", 0.9), full_row("R2", 2.1)}};
  plan.element = R"("form_rating_kpa":30,"reach_pressure_z":0.6)";
  Pour pour{plan};
  pour.at(0, hang("R1")).placed(1, 10, 1800, 1.8);
  pour.ran("R1", 1500, 1700).ran("R2", 1900, 1950).ran("R1", 3000, 3010);
  const Checked seen = pour.checked();
  REQUIRE_FALSE(seen.of("head-high").empty());
  const Finding finding = seen.of("head-high").front();
  CHECK(kinds(seen, finding) == std::vector<std::string>{"hang", "run", "rest"});
  CHECK(in_order_of_time(seen, finding));
}

TEST_CASE("an old load rests on its ticket, its discharge and its tests") {
  Pour pour;
  pour.load("T1", 2, -9000, 100, 900).load("T2", 2, -300, 900, 1500);
  pour.at(200, R"("do":"test","ticket":"T1","slump":0.12)");
  pour.placed(1, 100, 1500, 0.6);
  const Checked seen = pour.checked();
  const Finding finding = seen.only("load-old");
  const auto all = kinds(seen, finding);
  CHECK(std::count(all.begin(), all.end(), "truck") == 1);
  CHECK(std::count(all.begin(), all.end(), "test") == 1);
  CHECK(std::count(all.begin(), all.end(), "discharge") >= 1);
  CHECK(std::count(all.begin(), all.end(), "lift-start") == 0);
  CHECK(in_order_of_time(seen, finding));
}

TEST_CASE("a lift under its dose rests on its start, its readings and the runs that reach it") {
  PlanText plan{
      .rows = {full_row("R1", 0.3, "[1]", "near", 0.3), full_row("R3", 1.5, "[3]", "near", 0.3)}};
  Pour pour{plan};
  pour.at(0, hang("R1")).placed(1, 10, 600, 0.6).ran("R1", 700, 720);
  pour.placed(2, 800, 1400, 1.2).placed(3, 1500, 2100, 1.8).ran("R3", 2200, 2320);
  const Checked seen = pour.checked();
  REQUIRE_FALSE(seen.of("dose-low").empty());
  Finding finding = seen.of("dose-low").front();
  REQUIRE(finding.lift == 1);
  const auto all = kinds(seen, finding);
  CHECK(std::count(all.begin(), all.end(), "lift-start") == 1);
  CHECK(std::count(all.begin(), all.end(), "run") == 1);  // R3 reaches nothing of it
  CHECK(std::count(all.begin(), all.end(), "rest") == 1);
  CHECK(in_order_of_time(seen, finding));
}
