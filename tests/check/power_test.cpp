// power-over: amps running on an inverter against what it gives; volts-low: the share lost in the
// cord to a motor; speed-out. Figures by hand: 7.5 A a motor, two motors a row.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

const std::string kType = R"("motor_type":{"amps":7.5,"force_kn":4,"vpm_max":6000})";
const std::string kFour = R"("R1-1","R1-2","R2-1","R2-2")";

PlanText fed(double max_amps, const std::string& motors = kFour, const std::string& cable = "") {
  PlanText plan;
  plan.rows = {full_row("R1", 0.3), full_row("R2", 0.9)};
  plan.more = fmt::format(R"("power":[{{"id":"I1","volts":42,"max_amps":{},"motors":[{}]{}}}],{})",
                          max_amps, motors, cable, kType);
  return plan;
}

Pour both_rows(const PlanText& plan) {
  return Pour{plan}.placed(1, 0, 600, 0.6).ran("R1", 700, 800).ran("R2", 750, 850);
}

Checked corded(double metres, double mm2 = 4) {
  const PlanText plan =
      fed(40, kFour, fmt::format(R"(,"cable":{{"mm2":{},"length":{}}})", mm2, metres));
  return both_rows(plan).checked();
}

// The longest cord that loses no more than 5 % of 42 V at 7.5 A: sqrt(3) I L Z. Class 5 copper of
// IEC 60228 (read) at 70 degC, R = R20 (1 + 0.004 x 50), and X 0.08 ohm/km at 50 Hz (common
// practice), twice that at the 100 Hz of 6000 vpm; the angle is not known, so Z counts.
double longest(double ohms_per_km) {
  return 0.05 * 42 / (std::sqrt(3.) * 7.5 * std::hypot(ohms_per_km * 1.2, 0.16) / 1000);
}

Checked sped(double vpm, const PlanText& plan = fed(40)) {
  return Pour{plan}
      .placed(1, 0, 600, 0.6)
      .at(700, run("R1", "near", vpm))
      .at(800, rest("R1"))
      .checked();
}

}  // namespace

TEST_CASE("an inverter is overloaded above its amps, not at them") {
  CHECK_FALSE(both_rows(fed(30.1)).checked().has("power-over"));
  CHECK_FALSE(both_rows(fed(30)).checked().has("power-over"));
  const Finding f = both_rows(fed(29.9)).checked().only("power-over");
  CHECK(f.severity == Severity::mend);
  CHECK(f.measured->si == about(30));
  CHECK(f.limit->si == about(29.9));
  CHECK(unit_of(f) == "A");
  CHECK(f.from == seconds(750));  // both rows run from 750 to 800 s
  CHECK(f.to == seconds(800));
  CHECK(source_text(f.source, kTerminal).find("plan") != std::string::npos);
}

TEST_CASE("rows that run one after the other do not add up") {
  Pour pour{fed(15)};
  pour.placed(1, 0, 600, 0.6).ran("R1", 700, 800).ran("R2", 800, 900).ran("R1", 900, 1000);
  CHECK_FALSE(pour.checked().has("power-over"));
  pour.plan = fed(14.9);
  CHECK(pour.checked().only("power-over").measured->si == about(15));
}

TEST_CASE("motors that hang on no place draw nothing") {
  Pour pour = both_rows(fed(22.5)).at(10, hang("R1", {"R1-1"}));
  CHECK_FALSE(pour.checked().has("power-over"));
  pour.plan = fed(22.4);
  CHECK(pour.checked().only("power-over").measured->si == about(22.5));
}

TEST_CASE("motors of another inverter do not count on this one") {
  CHECK_FALSE(both_rows(fed(15, R"("R1-1","R1-2")")).checked().has("power-over"));
  CHECK(both_rows(fed(14.9, R"("R1-1","R1-2")")).checked().has("power-over"));
}

TEST_CASE("each inverter is judged for itself") {
  PlanText plan = fed(29);
  plan.more = R"("power":[{"id":"I1","volts":42,"max_amps":14,"motors":["R1-1","R1-2"]},)"
              R"({"id":"I2","volts":42,"max_amps":15,"motors":["R2-1","R2-2"]}],)" +
              kType;
  const Checked seen = both_rows(plan).checked();
  const Finding f = seen.only("power-over");
  CHECK(f.inverter == InverterId{"I1"});
  CHECK(seen.says(f).find("I1") != std::string::npos);
}

TEST_CASE("without a motor type there are no amps to add") {
  PlanText plan = fed(1);
  plan.more = R"("power":[{"id":"I1","volts":42,"max_amps":1,"motors":["R1-1","R1-2"]}])";
  CHECK_FALSE(both_rows(plan).checked().has("power-over"));
  CHECK_FALSE(both_rows(plan).checked().has("volts-low"));
}

TEST_CASE("an overload is told of while it runs") {
  Pour pour{fed(29)};
  pour.at(0, lift_start(1)).at(10, run("R1")).at(20, run("R2"));
  CHECK_FALSE(pour.live(15).has("power-over"));
  CHECK(pour.live(30).has("power-over"));
}

TEST_CASE("an overload that comes again is told of again on the tablet") {
  Pour pour{fed(29)};
  pour.at(0, lift_start(1)).ran("R1", 10, 110).ran("R2", 20, 120);
  pour.ran("R1", 1010, 1110).ran("R2", 1020, 1120);
  CHECK(*pour.checked().only("power-over").from == seconds(20));
  const Finding f = pour.live(1200).only("power-over");
  CHECK(*f.from == seconds(1020));
  CHECK(*f.to == seconds(1110));
  CHECK(f.inverter == InverterId{"I1"});
}

TEST_CASE("a cord loses too much over 5 % of the volts, not at it") {
  for (const auto& [mm2, ohms] : {std::pair{1.5, 13.3}, {2.5, 7.98}, {4., 4.95}, {6., 3.30}}) {
    const double most = longest(ohms);
    const auto& tried = mm2;
    CAPTURE(tried);
    CHECK_FALSE(corded(most * 0.999, mm2).has("volts-low"));
    CHECK_FALSE(corded(most, mm2).has("volts-low"));
    const Finding f = corded(most * 1.001, mm2).only("volts-low");
    CHECK(f.severity == Severity::mend);
    CHECK(f.measured->si == about(0.05005));
    CHECK(f.limit->si == 0.05);
    CHECK(unit_of(f) == "1");
  }
}

TEST_CASE("the volts an inverter was set to count, once somebody said them") {
  PlanText plan = fed(40, kFour, fmt::format(R"(,"cable":{{"mm2":4,"length":{}}})", longest(4.95)));
  Pour pour = both_rows(plan);
  CHECK_FALSE(pour.checked().has("volts-low"));
  pour.at(1, R"("do":"speed","inverter":"I1","vpm":6000,"volts":40)");
  const Checked seen = pour.checked();
  const Finding f = seen.only("volts-low");
  CHECK(f.measured->si == about(0.05 * 42 / 40));
  CHECK(seen.says(f).find("40.0 V") != std::string::npos);
}

TEST_CASE("a cord that would lose more volts than there are is told of without a figure") {
  const Checked seen = corded(longest(13.3) * 25, 1.5);
  const Finding f = seen.only("volts-low");
  CHECK_FALSE(f.measured);
  CHECK(seen.says(f).find("42.0 V") != std::string::npos);
}

TEST_CASE("a cord nothing ran on, or that the plan does not give, is not judged") {
  const std::string cable = R"(,"cable":{"mm2":1.5,"length":100})";
  CHECK_FALSE(Pour{fed(40, kFour, cable)}.placed(1, 0, 600, 0.6).checked().has("volts-low"));
  CHECK_FALSE(both_rows(fed(40)).checked().has("volts-low"));
}

TEST_CASE("a row runs from 3000 vpm to the motor's own highest speed") {
  for (const double fine : {3000., 3001., 5999., 6000.}) CHECK_FALSE(sped(fine).has("speed-out"));
  const Finding fast = sped(6001).only("speed-out");
  CHECK(fast.severity == Severity::mend);
  CHECK(fast.measured->si == about(6001));
  CHECK(fast.limit->si == about(6000));
  CHECK(unit_of(fast) == "vpm");
  CHECK(source_text(fast.source, kTerminal) == "plan: motor_type.vpm_max");
  const Finding slow = sped(2999).only("speed-out");
  CHECK(slow.measured->si == about(2999));
  CHECK(slow.limit->si == about(3000));
}

TEST_CASE("without a motor type only the lowest speed is known") {
  CHECK_FALSE(sped(9000, {}).has("speed-out"));
  CHECK(sped(2999, {}).has("speed-out"));
}

TEST_CASE("a run of unknown speed is not judged by it") {
  Pour pour{fed(40)};
  pour.placed(1, 0, 600, 0.6).at(700, R"("do":"run","element":"W1","row":"R1")");
  CHECK_FALSE(pour.at(800, rest("R1")).checked().has("speed-out"));
}

TEST_CASE("a speed changed in the middle of a run counts at its highest and its lowest") {
  Pour pour{fed(40)};
  pour.placed(1, 0, 600, 0.6).at(700, run("R1", "near", 5000)).at(800, rest("R1"));
  CHECK_FALSE(pour.checked().has("speed-out"));
  CHECK(Pour{pour}.at(750, run("R1", "near", 6500)).checked().only("speed-out").measured->si ==
        about(6500));
  CHECK(Pour{pour}.at(750, run("R1", "near", 2500)).checked().only("speed-out").measured->si ==
        about(2500));
}
