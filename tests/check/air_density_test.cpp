// air-out and density-out: just below, at and just above their limits.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/plan/plan_json.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

Checked tested(const std::string& mix, const std::string& field, double figure) {
  Pour pour = good_pour();
  pour.plan.mix += mix;
  pour.at(525, fmt::format(R"("do":"test","ticket":"T1","{}":{})", field, figure));
  return pour.checked();
}

bool air_out(const std::string& mix, double air) {
  return tested(mix, "air", air).has("air-out");
}
bool density_out(const std::string& mix, double density) {
  return tested(mix, "density", density).has("density-out");
}

}  // namespace

// 1.5 points: ASTM C94, from memory.
TEST_CASE("air is out more than 1.5 points off the planned air, or by what the plan tolerates") {
  const std::string planned = R"(,"air":5)";
  CHECK(air_out(planned, 3.4));
  CHECK_FALSE(air_out(planned, 3.5));
  CHECK_FALSE(air_out(planned, 6.5));
  CHECK(air_out(planned, 6.6));
  const std::string narrow = R"(,"air":5,"air_tol":1)";
  CHECK(air_out(narrow, 3.9));
  CHECK_FALSE(air_out(narrow, 4));
  CHECK_FALSE(air_out(narrow, 6));
  CHECK(air_out(narrow, 6.1));
  CHECK_FALSE(air_out(R"(,"air":1)", 0));  // not below nothing
  CHECK_FALSE(air_out("", 9));             // no air is planned
  CHECK_FALSE(air_out(R"(,"air_tol":1)", 9));
}

TEST_CASE("an air that is out tells measured, planned and limit, and where the limit is from") {
  const Checked seen = tested(R"(,"air":5)", "air", 7);
  const Finding f = seen.only("air-out");
  CHECK(f.severity == Severity::mend);
  CHECK(f.ticket == TicketId{"T1"});
  CHECK(f.measured == Amount{Measure::percent, 7});
  CHECK(f.limit == Amount{Measure::percent, 6.5});
  CHECK(f.source.code == Source::Code::standard);
  CHECK(tested(R"(,"air":5,"air_tol":1)", "air", 7).only("air-out").source.code ==
        Source::Code::plan);
}

TEST_CASE("density is judged only by a tolerance of the plan") {
  const std::string planned = R"(,"density":2400,"density_tol":40)";
  CHECK(density_out(planned, 2359));
  CHECK_FALSE(density_out(planned, 2360));
  CHECK_FALSE(density_out(planned, 2440));
  CHECK(density_out(planned, 2441));
  CHECK_FALSE(density_out(R"(,"density":2400)", 2000));
  CHECK_FALSE(density_out(R"(,"density_tol":40)", 2000));
  CHECK(tested(planned, "density", 2441).only("density-out").limit->si == 2440.);
}

TEST_CASE("a plan tells air and density and their tolerances again as they were read") {
  PlanText text;
  text.mix += R"(,"air":5.5,"air_tol":1,"density":2400,"density_tol":40)";
  const auto plan = parse_plan(text.json(), "the plan");
  REQUIRE(plan);
  const Mix& mix = plan->mixes.front();
  CHECK(mix.air == 5.5);
  CHECK(mix.air_tolerance == 1.);
  CHECK(mix.density == kilograms_per_m3(2400));
  CHECK(mix.density_tolerance == kilograms_per_m3(40));
  CHECK(plan->extra.find("air") == std::string::npos);
  CHECK(plan->extra.find("density") == std::string::npos);
  CHECK(*parse_plan(to_json(*plan), "the plan") == *plan);
  PlanText bad;
  bad.mix += R"(,"air":31)";
  const auto refused = parse_plan(bad.json(), "the plan");
  REQUIRE_FALSE(refused);
  CHECK(to_text(refused.error()).find("air") != std::string::npos);
}
