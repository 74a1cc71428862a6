// What a second of a slow row counts for, and what a trip stops.
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

const std::string kMotorType = R"("motor_type":{"amps":5,"force_kn":4,"vpm_max":6000})";

// Two rows that reach the same face, the upper fed by an inverter a motor.
Pour placed(const std::string& more = kMotorType) {
  PlanText plan;
  plan.height = 1;
  plan.lifts = "[1]";
  plan.rows = {full_row("R1", 0.5, "[1]", "near", 0.6), full_row("R2", 0.5, "[1]", "near", 0.6)};
  plan.mix += kQ;
  plan.limits = kFresh;
  plan.more = more;
  Pour pour{plan};
  pour.at(60, hang("R1")).at(60, hang("R2")).placed(1, 100, 1000, 1.0);
  return pour;
}

std::string turns(const std::string& row, int vpm) {
  return R"("do":"run","element":"W1","row":")" + row + R"(","vpm":)" + std::to_string(vpm);
}
std::string speed(const std::string& inverter, int vpm) {
  return R"("do":"speed","inverter":")" + inverter + R"(","vpm":)" + std::to_string(vpm);
}

double dose(const Pour& pour) {
  const auto least = pour.checked().lift(1).min_dose;
  REQUIRE(least);
  return in_seconds(*least);
}

// R1's motors on I1, R2's left one on I1, its right one on I2.
const std::string kPower =
    R"("power":[{"id":"I1","volts":42,"max_amps":30,"motors":["R1-1","R1-2","R2-1"]},)"
    R"({"id":"I2","volts":42,"max_amps":30,"motors":["R2-2"]}],)" +
    kMotorType;

}  // namespace

// The project's own definition, worked by hand: (2400/4800)^2 = 0.25, (3600/4800)^2 = 0.5625.
TEST_CASE("a second under the working speed counts as its square, over it whole") {
  for (const auto& [speed, share] :
       {std::pair{2400, 30.0}, {3600, 67.5}, {4800, 120.0}, {6000, 120.0}}) {
    const int vpm = speed;
    CAPTURE(vpm);
    Pour pour = placed();
    pour.at(1100, turns("R1", vpm)).at(1220, rest("R1"));
    CHECK(dose(pour) == about(share));
  }
}

TEST_CASE("of rows that reach a spot at once the fastest counts, never their sum") {
  Pour pour = placed();
  pour.at(1100, turns("R1", 2400)).at(1140, turns("R2", 4800));
  pour.at(1180, rest("R2")).at(1220, rest("R1"));
  CHECK(dose(pour) == about(80 * 0.25 + 40));
}

TEST_CASE("the plan may say what its motors work at; a plan without their type weighs nothing") {
  Pour told = placed(R"("motor_type":{"amps":5,"force_kn":4,"vpm_max":6000,"vpm_work":6000})");
  told.at(1100, turns("R1", 3000)).at(1220, rest("R1"));
  CHECK(dose(told) == about(30));
  Pour untold = placed("");
  untold.at(1100, turns("R1", 2400)).at(1220, rest("R1"));
  CHECK(dose(untold) == about(120));
  const auto gaps = untold.checked().report.not_judged;
  CHECK(std::any_of(gaps.begin(), gaps.end(),
                    [](const NotJudged& gap) { return gap.what == "motor-type"; }));
}

TEST_CASE("a run turns at its own speed until an inverter that feeds it is set, then at that") {
  Pour pour = placed(kPower);
  pour.at(1100, turns("R1", 6000)).at(1130, speed("I1", 2400)).at(1230, rest("R1"));
  CHECK(dose(pour) == about(30 + 100 * 0.25));
  // Set before it ran, and nothing named as it began.
  Pour set = placed(kPower);
  set.at(1050, speed("I1", 2400));
  set.at(1100, R"("do":"run","element":"W1","row":"R1")").at(1220, rest("R1"));
  CHECK(dose(set) == about(30));
  CHECK_FALSE(set.checked().state.runs[0].speed_untold());
  // Fed by two: the slower counts.
  Pour two = placed(kPower);
  two.at(1050, speed("I1", 6000)).at(1051, speed("I2", 2400));
  two.at(1100, R"("do":"run","element":"W1","row":"R2")").at(1220, rest("R2"));
  CHECK(dose(two) == about(30));
}

TEST_CASE("a row that ran slowly is told with what it ran and what that counts") {
  Pour pour = placed();
  pour.at(1100, turns("R1", 3600)).at(1220, rest("R1"));
  pour.at(1300, turns("R2", 6000)).at(1400, rest("R2"));
  pour.at(2000, R"("do":"pour-close")");
  const Checked seen = pour.checked();
  const Finding f = seen.only("run-short");
  CHECK(f.measured->si == about(67.5));
  CHECK(seen.says(f).find("ran 120 s, so slowly that it counts 67") != std::string::npos);
}

TEST_CASE("a trip stops what its inverter feeds; a run with none left is over") {
  Pour one = placed(kPower);
  one.at(1100, turns("R2", 6000)).at(1160, R"("do":"trip","inverter":"I2")").at(1220, rest("R2"));
  const Checked half = one.checked();
  REQUIRE(half.state.runs.size() == 1);
  CHECK(half.state.runs[0].trips.size() == 1);
  CHECK(in_seconds(*half.state.runs[0].to) == about(1220));
  CHECK(dose(one) == about(60));  // on the right
  CHECK(in_seconds(*half.lift(1).mean_dose) == about((2 * 120 + 2 * 60) / 4.0));

  Pour all = placed(kPower);
  all.at(1100, turns("R1", 6000)).at(1160, R"("do":"trip","inverter":"I1")");
  all.at(1300, turns("R1", 6000)).at(1360, rest("R1"));
  const Checked seen = all.checked();
  REQUIRE(seen.state.runs.size() == 2);
  CHECK(in_seconds(*seen.state.runs[0].to) == about(1160));
  CHECK(seen.of("run-unended").empty());
  CHECK(dose(all) == about(120));
}

TEST_CASE("motors that a trip stopped start again with a second run of their row") {
  Pour pour = placed(kPower);
  pour.at(1100, turns("R2", 6000)).at(1130, R"("do":"trip","inverter":"I2")");
  pour.at(1160, turns("R2", 6000)).at(1220, rest("R2"));
  const Checked seen = pour.checked();
  REQUIRE(seen.state.runs.size() == 2);
  CHECK(in_seconds(*seen.state.runs[0].to) == about(1160));
  CHECK(dose(pour) == about(30 + 60));
  // Nothing had tripped: said twice.
  Pour twice = placed(kPower);
  twice.at(1100, turns("R2", 6000)).at(1160, turns("R2", 6000)).at(1220, rest("R2"));
  CHECK(twice.checked().state.runs.size() == 1);
}

TEST_CASE("a rest or a trip said after the close moves no figure, and the run stays unended") {
  const auto closed = [](const std::string& after) {
    Pour pour = placed(kPower);
    pour.at(1100, turns("R1", 6000)).at(1200, R"("do":"note","text":"seen")");
    pour.at(2000, R"("do":"pour-close")");
    if (!after.empty()) pour.at(2100, after);
    return pour;
  };
  const Pour alone = closed("");
  REQUIRE(alone.checked().has("run-unended"));
  CHECK(dose(alone) == about(100));  // to the next event
  for (const std::string& after : {rest("R1"), std::string{R"("do":"trip","inverter":"I1")"}}) {
    CAPTURE(after);
    CHECK(dose(closed(after)) == about(100));
    CHECK(closed(after).checked().rules() == alone.checked().rules());
  }
}
