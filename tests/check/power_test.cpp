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

namespace {

// What more an inverter I1 of four motors and 60 A has.
Checked with_feed(const std::string& more, const std::string& cable = "") {
  return both_rows(fed(60, kFour, cable + more)).checked();
}

double lost(const Checked& seen) {
  return seen.only("volts-low").measured->si;
}

}  // namespace

// The same trunk as in the tests of trade, by the checker: eight motors of 4.2 A, 25 m of 4 mm2.
TEST_CASE("a trunk is judged by all that goes through it at once") {
  PlanText plan;
  std::string ids, row_a, row_b;
  std::vector<MotorText> a, b;
  for (int i = 1; i <= 8; ++i) {
    (i <= 4 ? a : b).push_back({fmt::format("M{}", i), 0.5 + ((i - 1) % 4), 0.6});
    ids += fmt::format(R"({}"M{}")", i > 1 ? "," : "", i);
  }
  plan.rows = {row_text("R1", 0.3, a), row_text("R2", 0.9, b)};
  plan.more = fmt::format(
      R"("power":[{{"id":"I1","volts":42,"max_amps":40,"motors":[{}],)"
      R"("trunk":{{"mm2":4,"length":25}}}}],"motor_type":{{"amps":4.2,"force_kn":4,"vpm_max":6000}})",
      ids);
  const Checked seen = both_rows(plan).checked();
  const Finding f = seen.only("volts-low");
  CHECK(f.measured->si == doctest::Approx(0.206).epsilon(0.003));
  CHECK(f.inverter == InverterId{"I1"});
  CHECK(f.from == seconds(750));
  CHECK(f.to == seconds(800));
  CHECK(seen.says(f).find("8 motors on the trunk, 33.6 A in all") != std::string::npos);
  // Told while it goes on, too.
  CHECK(both_rows(plan).live(790).has("volts-low"));
  CHECK_FALSE(seen.has("power-over"));
}

TEST_CASE("a motor's own cord comes after the trunk, and only motors on the trunk load it") {
  const double trunk = lost(with_feed(R"(,"trunk":{"mm2":4,"length":20})"));
  const double own = lost(corded(40));
  const double both =
      lost(with_feed(R"(,"trunk":{"mm2":4,"length":20})", R"(,"cable":{"mm2":4,"length":40})"));
  CHECK(both == about(trunk + own));
  const double two = lost(with_feed(R"(,"trunk":{"mm2":4,"length":20,"motors":["R1-1","R1-2"]})"));
  CHECK(two == about(trunk / 2));
}

TEST_CASE("internal vibrators on an inverter count while any row runs on it") {
  const auto power = [](int heads) {
    return both_rows(fed(30, kFour,
                         fmt::format(R"(,"cable":{{"mm2":4,"length":25}},)"
                                     R"("internal":{{"heads":{},"amps":2}})",
                                     heads)))
        .checked();
  };
  const Checked one = power(1);
  const Finding f = one.only("power-over");
  CHECK(f.measured->si == about(32));
  CHECK(one.says(f).find("1 internal vibrators") != std::string::npos);
  CHECK(one.says(f).find("a choice of this project") != std::string::npos);
}

// S = sqrt(3) x 42 V x 30 A = 2.182 kVA.
TEST_CASE("a generator is overloaded above its rating derated, not at it") {
  const double kva = std::sqrt(3.) * 42 * 30 / 1000;
  const auto with = [](double rating, const std::string& more) {
    return both_rows(fed(60, kFour,
                         fmt::format(R"(,"cable":{{"mm2":10,"length":1}},)"
                                     R"("generator":{{"kva":{:.12f}{}}})",
                                     rating, more)))
        .checked();
  };
  CHECK_FALSE(with(kva * 1.001, R"(,"derate":1)").has("generator-over"));
  CHECK_FALSE(with(kva, R"(,"derate":1)").has("generator-over"));
  const Checked over = with(kva * 0.999, R"(,"derate":1)");
  const Finding f = over.only("generator-over");
  CHECK(f.measured->si == about(kva));
  CHECK(unit_of(f) == "kVA");
  CHECK(f.from == seconds(750));
  CHECK(source_text(f.source, kTerminal) == "plan: power[].generator");
  // Not given: 0.8, and told.
  CHECK_FALSE(with(kva / 0.8, "").has("generator-over"));
  const Checked untold = with(kva / 0.8 * 0.999, "");
  CHECK(source_text(untold.only("generator-over").source, kTerminal).find("0.8 of the rating") !=
        std::string::npos);
}

TEST_CASE("inverters on one generator load it together, on two each its own") {
  const auto on = [](const std::string& a, const std::string& b) {
    PlanText plan = fed(40);
    plan.more = fmt::format(
        R"("power":[{{"id":"I1","volts":42,"max_amps":40,"motors":["R1-1","R1-2"],"generator":{{{}}}}},)"
        R"({{"id":"I2","volts":42,"max_amps":40,"motors":["R2-1","R2-2"],"generator":{{{}}}}}],{})",
        a, b, kType);
    return both_rows(plan).checked();
  };
  // Each takes 1.09 kVA, both at once 2.18.
  const Checked one = on(R"("id":"G","kva":2,"derate":1)", R"("id":"G","kva":2,"derate":1)");
  CHECK(one.only("generator-over").measured->si == about(std::sqrt(3.) * 42 * 30 / 1000));
  CHECK(one.says(one.only("generator-over")).find("I1, I2") != std::string::npos);
  CHECK_FALSE(
      on(R"("id":"G","kva":2,"derate":1)", R"("id":"H","kva":2,"derate":1)").has("generator-over"));
  // Without a name the same figures are taken to be the same machine.
  CHECK(on(R"("kva":2,"derate":1)", R"("kva":2,"derate":1)").has("generator-over"));
}

TEST_CASE("an inverter set out of its motors' speeds is told with the inverter, once") {
  Pour pour{fed(40)};
  pour.placed(1, 0, 600, 0.6);
  pour.at(650, R"("do":"speed","inverter":"I1","vpm":6500)");
  for (const std::string row : {"R1", "R2"}) {
    pour.at(700, R"("do":"run","element":"W1","row":")" + row + '"').at(800, rest(row));
  }
  const Checked seen = pour.checked();
  const auto found = seen.of("speed-out");
  REQUIRE(found.size() == 2);
  CHECK(found[0].inverter == InverterId{"I1"});
  CHECK(found[0].group == found[1].group);
  CHECK(seen.says(found[0]).find("inverter I1 is set to 6500 vpm, above 6000 vpm") !=
        std::string::npos);
  // Set while it ran, at a speed of its own before.
  Pour later{fed(40)};
  later.placed(1, 0, 600, 0.6).at(700, run("R1")).at(800, rest("R1"));
  later.at(750, R"("do":"speed","inverter":"I1","vpm":2900)");
  CHECK(later.checked().only("speed-out").inverter == InverterId{"I1"});
  CHECK_FALSE(sped(6500).only("speed-out").inverter);
}

TEST_CASE("a trip that nobody answers is told once, two minutes on, until the row is run again") {
  Pour pour{fed(40)};
  pour.placed(1, 0, 600, 0.6).at(700, run("R1")).at(740, R"("do":"trip","inverter":"I1")");
  CHECK_FALSE(pour.live(859).has("trip-open"));
  const Finding f = pour.live(861).only("trip-open");
  CHECK(f.measured->si == about(40));
  CHECK(f.limit->si == about(90));
  CHECK(f.inverter == InverterId{"I1"});
  CHECK(pour.checked().has("trip-open"));
  Pour again = pour;
  again.at(870, run("R1"));
  CHECK_FALSE(again.live(880).has("trip-open"));
  // It had run enough: the trip harmed nothing.
  Pour enough{fed(40)};
  enough.placed(1, 0, 600, 0.6).at(700, run("R1")).at(791, R"("do":"trip","inverter":"I1")");
  CHECK_FALSE(enough.checked().has("trip-open"));
}

TEST_CASE("a trip that stops some motors of a row is told though the others ran on") {
  PlanText plan = fed(40, R"("R1-1")");
  plan.more = R"("power":[{"id":"I1","volts":42,"max_amps":40,"motors":["R1-1"]},)"
              R"({"id":"I2","volts":42,"max_amps":40,"motors":["R1-2"]}],)" +
              kType;
  Pour pour{plan};
  pour.placed(1, 0, 600, 0.6).at(700, run("R1")).at(740, R"("do":"trip","inverter":"I2")");
  pour.at(800, rest("R1"));
  const Finding f = pour.checked().only("trip-open");
  CHECK(f.inverter == InverterId{"I2"});
  CHECK(f.measured->si == about(40));
}
