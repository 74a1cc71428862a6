// load-old: from batching to the end of the discharge; temp-out: concrete measured too cold or too
// warm; volume-off: what was discharged against what stands below the tops.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/outlook/form.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

Checked aged(double batched, double age, const PlanText& plan = {}) {
  return Pour{plan}.load("T1", 5, batched, batched + age - 600, batched + age).checked();
}

Checked measured(double degrees, const PlanText& plan = {}) {
  return Pour{plan}.at(100, temp(degrees)).checked();
}

// 4 x 0.6 x 0.25 m: 0.6 m3 stand.
Pour standing(const PlanText& plan = {}) {
  return Pour{plan}.placed(1, 0, 600, 0.6);
}
Checked brought(double volume, const PlanText& plan = {}) {
  return standing(plan).load("T1", volume, -600, 0, 500).checked();
}

}  // namespace

TEST_CASE("a load is old over 90 min from batching to the end of its discharge") {
  for (const double batched : {-3600., -3599.9, -1234.567}) {
    CAPTURE(batched);
    CHECK_FALSE(aged(batched, 5399).has("load-old"));
    CHECK_FALSE(aged(batched, 5400).has("load-old"));
    const Finding f = aged(batched, 5401).only("load-old");
    CHECK(f.severity == Severity::mend);
    CHECK(f.measured->si == about(5401));
    CHECK(f.limit->si == 5400.);
    CHECK(unit_of(f) == "s");
    CHECK(f.element == 0);
    CHECK(source_text(f.source, kTerminal).starts_with("default: ASTM C94"));
  }
}

TEST_CASE("the age of a load may be the plan's, and the source says so") {
  const PlanText plan{.limits = R"("load_age_max_s":3600)"};
  CHECK_FALSE(aged(-600, 3600, plan).has("load-old"));
  CHECK(aged(-600, 3601, plan).only("load-old").limit->si == 3600.);
  CHECK(source_text(aged(-600, 3601, plan).only("load-old").source, kTerminal) == "plan");
}

TEST_CASE("a load whose end was not logged counts by the moment its discharge began") {
  const auto begun = [](double at) {
    Pour pour;
    pour.load("T1", 5, -100, 0, 1).without("discharge");
    return pour.at(at, R"("do":"discharge","ticket":"T1")").checked();
  };
  CHECK_FALSE(begun(5300).has("load-old"));
  CHECK(begun(5301).only("load-old").measured->si == about(5401));
  CHECK_FALSE(begun(5301).only("load-old").element);  // none was named
}

TEST_CASE("a load sent back ages on nobody's form") {
  Pour pour;
  pour.load("T1", 5, -100, 0, 1).without("discharge").at(9000, lift_start(1));
  CHECK_FALSE(pour.checked().has("load-old"));
}

TEST_CASE(
    "while the pour goes on, a load ages in the truck and at the form until its end is logged") {
  Pour pour;
  pour.load("T1", 5, -100, 0, 1).without("discharge").at(10, lift_start(1));
  CHECK_FALSE(pour.live(5300).has("load-old"));
  const Checked seen = pour.live(5301);
  const Finding waits = seen.only("load-old");
  CHECK(waits.measured->si == about(5401));
  CHECK(seen.says(waits).find("waits") != std::string::npos);
  CHECK(*waits.to == seconds(5300));  // it may have been sent back since: it does not stay news
  CHECK(*pour.live(9000).only("load-old").to == seconds(5300));
  pour.at(5200, R"("do":"discharge","ticket":"T1","element":"W1")");
  CHECK_FALSE(pour.live(5300).has("load-old"));
  const Finding flows = pour.live(5400).only("load-old");
  CHECK(flows.measured->si == about(5500));
  CHECK(*flows.to == seconds(5400));
  // Looked at afterwards, a load without a logged end counts by its beginning.
  CHECK_FALSE(pour.checked().has("load-old"));
  CHECK_FALSE(pour.at(6000, kClose).live(7000).has("load-old"));
}

TEST_CASE("a load batched before midnight ages across it") {
  // Opened half an hour before midnight.
  Pour pour{{}, "2026-03-02T23:30:00.000Z"};
  pour.load("T1", 5, 0, 4801, 5401);
  CHECK(pour.checked().only("load-old").measured->si == about(5401));
}

TEST_CASE("each old load is told of, and of each only itself") {
  Pour pour;
  pour.load("T1", 5, -4000, 0, 1400).load("T2", 5, -4000, 0, 1402).load("T3", 5, -4000, 0, 1500);
  const auto found = pour.checked().of("load-old");
  REQUIRE(found.size() == 2);
  CHECK(found[0].measured->si == about(5402));
  CHECK(found[1].measured->si == about(5500));
}

TEST_CASE("concrete is too cold under 10 degC and too warm over 35 degC") {
  for (const double fine : {10., 10.1, 20., 34.9, 35.}) CHECK_FALSE(measured(fine).has("temp-out"));
  const Finding cold = measured(9.9).only("temp-out");
  CHECK(cold.severity == Severity::mend);
  CHECK(cold.measured->si == 9.9);
  CHECK(cold.limit->si == 10.);
  CHECK(unit_of(cold) == "degC");
  CHECK(cold.from == seconds(100));
  CHECK(source_text(cold.source, kTerminal).starts_with("default: ACI 306"));
  const Finding warm = measured(35.1).only("temp-out");
  CHECK(warm.measured->si == 35.1);
  CHECK(warm.limit->si == 35.);
}

TEST_CASE("each end of the temperatures may be the plan's, and the source says which is") {
  const PlanText plan{.limits = R"("temp_min":13)"};
  CHECK_FALSE(measured(13, plan).has("temp-out"));
  CHECK(measured(12.9, plan).only("temp-out").limit->si == 13.);
  CHECK(source_text(measured(12.9, plan).only("temp-out").source, kTerminal) == "plan");
  CHECK(source_text(measured(36, plan).only("temp-out").source, kTerminal).starts_with("default"));
}

TEST_CASE("only the concrete's own temperature is judged") {
  Pour pour;
  pour.at(10, R"("do":"air-temp","temp":-5)").at(20, R"("do":"test","ticket":"T1","slump":0.1)");
  CHECK_FALSE(pour.checked().has("temp-out"));
}

TEST_CASE("the volume may be off by 8 %, more or less") {
  for (const double fine : {0.553, 0.552, 0.6, 0.647, 0.648}) {
    CAPTURE(fine);
    CHECK_FALSE(brought(fine).has("volume-off"));
  }
  const Finding over = brought(0.65).only("volume-off");
  CHECK(over.severity == Severity::mend);
  CHECK(over.measured->si == about(0.05 / 0.6));
  CHECK(over.limit->si == 0.08);
  CHECK(unit_of(over) == "1");
  CHECK(source_text(over.source, kTerminal).starts_with("default"));
  CHECK(brought(0.55).only("volume-off").measured->si == about(-0.05 / 0.6));
}

TEST_CASE("the tolerance may be the plan's, and the source says so") {
  const PlanText plan{.limits = R"("volume_tolerance":0.05)"};
  CHECK_FALSE(brought(0.63, plan).has("volume-off"));
  CHECK(brought(0.64, plan).only("volume-off").limit->si == 0.05);
  CHECK(source_text(brought(0.64, plan).only("volume-off").source, kTerminal) == "plan");
}

TEST_CASE("openings hold no concrete, as far as they lie under the top") {
  // 1 x 0.6 x 0.25 m of 0.6 m3 is out; the other opening is above the top by half.
  PlanText plan{.openings = R"([{"x":1,"z":0,"w":1,"h":0.6}])"};
  CHECK_FALSE(brought(0.45, plan).has("volume-off"));
  CHECK(brought(0.6, plan).only("volume-off").measured->si == about(0.15 / 0.45));
  plan.openings = R"([{"x":1,"z":0,"w":1,"h":0.6},{"x":1,"z":0,"w":0.5,"h":0.6}])";  // one in one
  CHECK(brought(0.6, plan).only("volume-off").measured->si == about(0.15 / 0.45));
  plan.openings = R"([{"x":1.5,"z":0.3,"w":1,"h":0.6}])";  // over both bays
  CHECK(brought(0.6, plan).only("volume-off").measured->si == about(0.075 / 0.525));
}

TEST_CASE("each bay stands as high as its own top") {
  // 2 x 0.25 x (0.6 + 0.3) = 0.45 m3.
  Pour pour;
  pour.at(0, lift_start(1)).at(600, top(0.6, 1)).at(600, top(0.3, 2));
  CHECK_FALSE(Pour{pour}.load("T1", 0.45, -600, 0, 500).checked().has("volume-off"));
  CHECK(Pour{pour}.load("T1", 0.6, -600, 0, 500).checked().has("volume-off"));
}

TEST_CASE("a deck's volume is its plan area by its top") {
  PlanText plan{.kind = "deck", .length = 6, .height = 4, .thickness = 0.2, .bays = "[6]"};
  plan.lifts = "[0.2]";
  plan.rows = {};
  const auto off = [&](double height, double volume) {
    const Checked seen =
        Pour{plan}.placed(1, 0, 600, height).load("T1", volume, -600, 0, 500).checked();
    return seen.has("volume-off") ? seen.only("volume-off").measured->si : 0.;
  };
  CHECK(off(0.2, 4.8) == 0);
  CHECK(off(0.2, 6) == about(0.25));
  plan.openings = R"([{"x":1,"z":0,"w":1,"h":0.2}])";  // a trough of 1 m right through
  CHECK(off(0.2, 4) == 0);
  CHECK(off(0.1, 2) == 0);  // half of it is not filled round yet
  CHECK(off(0.1, 2.5) == about(0.25));
}

TEST_CASE("loads add up, those not discharged do not count") {
  Pour pour = standing();
  pour.load("T1", 0.3, -600, 0, 100).load("T2", 0.3, -600, 100, 200).load("T3", 9, -600, 200, 300);
  CHECK(pour.checked().has("volume-off"));
  pour.without(R"("discharge","ticket":"T3")");
  CHECK_FALSE(pour.checked().has("volume-off"));
}

TEST_CASE("with no load, or no concrete, there is nothing to weigh up") {
  CHECK_FALSE(standing().checked().has("volume-off"));
  CHECK_FALSE(Pour{}.load("T1", 5, -600, 0, 500).checked().has("volume-off"));
  Pour ticketless = standing();  // a discharge whose truck was never entered brings no known volume
  CHECK_FALSE(ticketless.at(0, R"("do":"discharge","ticket":"T9")").checked().has("volume-off"));
}

TEST_CASE("a live look weighs the volume up when the pour is closed") {
  Pour pour = standing().load("T1", 5, -600, 0, 500);
  CHECK_FALSE(pour.live(900).has("volume-off"));
  CHECK(pour.at(1000, kClose).live(1000).has("volume-off"));
}

namespace {

std::string slump(double metres) {
  return fmt::format(R"("do":"test","ticket":"T1","slump":{})", metres);
}

Checked slumped(double metres, double planned) {
  PlanText plan;
  plan.mix = fmt::format(R"("unit_weight":24,"slump":{},"initial_set_h":5)", planned);
  return Pour{plan}.at(100, slump(metres)).checked();
}

}  // namespace

TEST_CASE("a slump is out by 25 mm up to 100 mm planned, by 38 mm above, both ways") {
  // ASTM C94 tolerances for slump, from memory: 25 mm up to 100 mm specified, 38 mm above.
  for (const auto& [slump, tolerance] :
       {std::pair{0.075, 0.025}, {0.1, 0.025}, {0.12, 0.038}, {0.2, 0.038}}) {
    const double planned = slump;
    INFO(planned);
    for (const double sense : {-1., 1.}) {
      CHECK_FALSE(slumped(planned + sense * (tolerance - 0.001), planned).has("slump-out"));
      CHECK_FALSE(slumped(planned + sense * tolerance, planned).has("slump-out"));
      const Finding f = slumped(planned + sense * (tolerance + 0.001), planned).only("slump-out");
      CHECK(f.severity == Severity::mend);
      CHECK(f.ticket == TicketId{"T1"});
      CHECK(f.measured->si == about(planned + sense * (tolerance + 0.001)));
      CHECK(f.limit->si == about(planned + sense * tolerance));
    }
  }
}

TEST_CASE("a slump of a load of unknown mix is held to the only mix, or to none") {
  PlanText two;
  two.mix += R"(},{"id":"B","unit_weight":24,"slump":0.2,"initial_set_h":5)";
  CHECK_FALSE(Pour{two}.at(100, slump(0.3)).checked().has("slump-out"));
  CHECK(Pour{two}.load("T1", 5, -600, 0, 100).at(50, slump(0.3)).checked().has("slump-out"));
}

TEST_CASE("a mix wants a temperature by the end of its first discharge, not each load") {
  const auto loads = [](double tested) {
    Pour pour = Pour{}.load("T1", 2, -600, 0, 600).load("T2", 2, 0, 700, 1300);
    if (tested >= 0) pour.at(tested, temp(18));
    return pour;
  };
  CHECK_FALSE(loads(300).checked().has("load-untested"));
  CHECK_FALSE(loads(600).checked().has("load-untested"));
  const Finding late = loads(601).checked().only("load-untested");
  CHECK(late.severity == Severity::mend);
  CHECK(late.ticket == TicketId{"T1"});
  CHECK(*late.to == seconds(600));
  CHECK(loads(-1).checked().has("load-untested"));
  CHECK_FALSE(loads(-1).live(599).has("load-untested"));
  CHECK(loads(-1).live(601).has("load-untested"));
}

TEST_CASE(
    "a first discharge whose end was not logged is over as the next begins, or at the close") {
  const auto open = [](bool next) {
    Pour pour = Pour{}.load("T1", 2, -600, 0, 1).without("discharge");
    pour.at(0, R"("do":"discharge","ticket":"T1","element":"W1")");
    if (next) pour.load("T2", 2, 0, 700, 1300);
    return pour;
  };
  CHECK_FALSE(open(true).live(699).has("load-untested"));
  CHECK(open(true).live(701).has("load-untested"));
  CHECK_FALSE(open(false).live(5000).has("load-untested"));
  CHECK(open(false).at(5000, kClose).live(5000).has("load-untested"));
}

TEST_CASE("a slump alone is no temperature") {
  CHECK(Pour{}.load("T1", 2, -600, 0, 600).at(10, slump(0.12)).checked().has("load-untested"));
}

TEST_CASE("water put into a truck is told, none is not") {
  const auto watered = [](const std::string& more) {
    Pour pour;
    pour.at(10, R"("do":"truck","ticket":"T1","mix":"A","volume":6,"batched":")" +
                    pour.moment(-600) + R"(","arrived":")" + pour.moment(0) + '"' + more);
    return pour.checked();
  };
  CHECK_FALSE(watered("").has("water-added"));
  CHECK_FALSE(watered(R"(,"water_added":0)").has("water-added"));
  const Checked seen = watered(R"(,"water_added":0.04)");
  const Finding f = seen.only("water-added");
  CHECK(f.severity == Severity::mend);
  CHECK(f.ticket == TicketId{"T1"});
  CHECK(f.measured->si == about(0.04));
  CHECK(unit_of(f) == "m3");
}
