#include "spoilt.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/log/event.h"

namespace rb::test {

namespace {

std::string replaced(std::string text, const std::string& old, const std::string& with) {
  const auto at = text.find(old);
  REQUIRE(at != std::string::npos);
  return text.replace(at, old.size(), with);
}

void unrun(Pour& pour, const std::string& row) {
  pour.without(R"("do":"run","element":"W1","row":")" + row);
  pour.without(R"("do":"rest","element":"W1","row":")" + row);
}

std::string clocked(const Pour& pour, double at, double wall) {
  return fmt::format(R"("do":"note","text":"n","entered":"{}","mono":{},"boot":"b1")",
                     pour.moment(wall), at);
}

}  // namespace

Checked Spoilt::seen() const {
  Pour pour = good_pour();
  spoil(pour);
  return live ? pour.live(*live) : pour.checked();
}

const std::vector<Spoilt>& spoilt() {
  static const std::vector<Spoilt> all{
      // One motor of R2 does not hang: bay 2 of lift 2 and its joint go without.
      {"dose-low", [](Pour& p) { p.at(2000, hang("R2", {"R2-1"})); }, {"knit-late"}},
      {"dose-high", [](Pour& p) { p.ran("R1", 1700, 2100); }, {"run-long"}},
      {"run-short",
       [](Pour& p) {
         unrun(p, "R1");
         p.ran("R1", 1500, 1580);
       },
       {"dose-low"}},
      {"run-long", [](Pour& p) { p.ran("R1", 1700, 1730); }, {}},
      {"row-missed", [](Pour& p) { unrun(p, "R1"); }, {"dose-low"}},
      {"row-empty", [](Pour& p) { p.ran("R3", 1700, 1710); }, {}},
      {"head-high",
       [](Pour& p) {
         p.plan.element = R"("form_rating_kpa":42)";
         p.ran("R1", 5200, 5210);  // under 24 kN/m3 x 1.8 m
       },
       {}},
      {"joint-old", [](Pour& p) { p.plan.element += R"(,"joint_age_max_s":600)"; }, {}},
      {"strip-early",
       [](Pour& p) { p.at(9000, R"("do":"strip","element":"W1","side":"near")"); },
       {}},
      {"strip-leave",
       [](Pour& p) {
         p.plan.element += R"(,"strip_permit":true)";
         p.at(400000, R"("do":"strip","element":"W1","side":"near")");
       },
       {}},
      {"cure-late",
       [](Pour& p) {
         p.plan.element += R"(,"cure_start_within_s":600)";
         p.at(5800, R"("do":"cure-start","element":"W1")");
       },
       {}},
      {"cure-short",
       [](Pour& p) {
         p.plan.element += R"(,"cure_for_s":600)";
         p.at(5200, R"("do":"cure-start","element":"W1")");
         p.at(5700, R"("do":"cure-end","element":"W1")");
       },
       {}},
      {"cure-temp",
       [](Pour& p) { p.at(20000, R"("do":"concrete-temp","element":"W1","temp":-1)"); },
       {}},
      {"evaporation",
       [](Pour& p) {
         p.plan.kind = "deck";
         p.plan.height = 0.25;
         p.plan.thickness = 1.8;
         for (const int lift : {1, 2, 3}) {
           p.at(1610 + 1800 * (lift - 1), insert(lift) + R"(,"points":40)");
         }
         p.at(610, R"("do":"air-temp","temp":30,"humidity":20,"wind":12)");
       },
       {}},
      {"specimen-low",
       [](Pour& p) {
         p.plan.mix += R"(,"strength_mpa":40)";
         p.at(525, R"("do":"test","ticket":"T1","specimens":["S1"])");
         p.at(2419200, R"("do":"specimen","specimen":"S1","age_days":28,"strength_mpa":38)");
       },
       {}},
      {"heads-few",
       [](Pour& p) {  // 0.6 m of a bay 2 m long and 8 m thick in a quarter of an hour: 38.4 m3/h
         p.plan.thickness = 8;
         p.plan.mix += kQ;
         for (int lift = 1; lift <= 3; ++lift) {
           p.at(1800.0 * lift - 250, insert(lift, 0, 0.27, 0.15) + R"(,"points":400,"heads":1)");
         }
       },
       {"volume-off"}},
      {"gate-passed",
       [](Pour& p) {
         p.at(2300, R"("do":"override","rule":"ready-open","element":"W1","why":"seen")");
       },
       {}},
      {"front-unknown",
       [](Pour& p) {
         p.changed(R"("do":"lift-end","element":"W1","lift":2)", R"("height":1.2)",
                   R"("height":1.2,"bay":1)");
         p.at(2700, lift_end(2, 1.2, 2));
       },
       {}},
      {"rise-fast", [](Pour& p) { p.plan.element = R"("rise_limit":1.1)"; }, {}},
      {"form-short",
       [](Pour& p) {
         p.plan.element = R"("form_rating_kpa":43)";  // under 24 kN/m3 x 1.8 m
         p.plan.mix = R"("unit_weight":24,"slump":0.2,"initial_set_h":5)";
         p.without(R"("do":"test")").at(520, temp(20));
       },
       {}},
      {"lift-deep", [](Pour& p) { p.plan.lifts = "[0.5,1.2,1.8]"; }, {}},
      {"knit-late",
       // Its one load sets at 3613 s, all at once: what came later was never plastic.
       [](Pour& p) { p.plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":1.0556)"; },
       {"dose-low"}},
      {"top-fell", [](Pour& p) { p.at(1550, top(0.5)); }, {}},
      {"load-old", [](Pour& p) { p.plan.limits = R"("load_age_max_s":5399)"; }, {}},
      {"temp-out",
       [](Pour& p) {
         p.plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":8)";
         p.at(530, temp(36));
       },
       {}},
      {"form-moved",
       [](Pour& p) { p.at(5300, R"("do":"moved","what":"form","element":"W1")"); },
       {}},
      {"water-added",
       [](Pour& p) {
         p.without(R"("do":"truck")")
             .at(490, R"("do":"truck","ticket":"T1","mix":"A","volume":1.8,"water_added":0.04,)"
                      R"("batched":")" +
                          p.moment(-600) + R"(","arrived":")" + p.moment(490) + '"');
       },
       {}},
      {"knit-near",
       [](Pour& p) { p.plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":1.1)"; },
       {},
       3290},
      {"load-untested", [](Pour& p) { p.without(R"("do":"test")"); }, {}},
      {"slump-out", [](Pour& p) { p.at(525, R"("do":"test","ticket":"T1","slump":0.16)"); }, {}},
      {"air-out",
       [](Pour& p) {
         p.plan.mix += R"(,"air":5)";
         p.at(525, R"("do":"test","ticket":"T1","air":6.6)");
       },
       {}},
      {"density-out",
       [](Pour& p) {
         p.plan.mix += R"(,"density":2400,"density_tol":40)";
         p.at(525, R"("do":"test","ticket":"T1","density":2350)");
       },
       {}},
      {"unvibrated",
       [](Pour& p) { unrun(p, "R3"); },
       {"knit-late"}},  // nor was it worked into the lift below
      {"volume-off", [](Pour& p) { p.load("T2", 1, 4000, 5000, 5100); }, {}},
      {"power-over", [](Pour& p) { p.ran("R2", 1520, 1530); }, {}},
      {"volts-low",
       [](Pour& p) { p.plan.more = replaced(p.plan.more, R"("length":25)", R"("length":28)"); },
       {}},
      {"generator-over",
       [](Pour& p) {
         p.plan.more = replaced(p.plan.more, R"("length":25})",
                                R"("length":25},"generator":{"kva":1,"derate":1})");
       },
       {}},
      {"trip-open",
       [](Pour& p) { p.at(1570, R"("do":"trip","inverter":"I1")"); },
       {"dose-low", "run-short"}},
      {"speed-out", [](Pour& p) { p.at(1550, run("R1", "near", 6500)); }, {}},
      {"cable-open", [](Pour& p) { p.at(1550, hang("R1", {}, false)); }, {}},
      {"row-far",
       [](Pour& p) {
         p.plan.rows[0] = row_text("R1", 0.3, {{"R1-1", 1}, {"R1-2", 3.1}});
       },
       {}},
      {"insert-few",
       [](Pour& p) {
         // A thick section: each lift inserted, its points told, one lift short of them.
         p.plan.thickness = 0.31;
         p.plan.limits = R"("volume_tolerance":0.3)";
         for (const int lift : {1, 2, 3}) {
           p.at(1610 + 1800 * (lift - 1),
                insert(lift, 0, 0.27, 0.15) + (lift == 2 ? R"(,"points":4)" : R"(,"points":40)"));
         }
       },
       {}},
      {"face-low",
       [](Pour& p) {
         // A thick section, each lift inserted, whose last row never ran.
         p.plan.thickness = 0.31;
         p.plan.limits = R"("volume_tolerance":0.3)";
         unrun(p, "R3");
         for (const int lift : {1, 2, 3}) {
           p.at(1610 + 1800 * (lift - 1), insert(lift) + R"(,"points":40)");
         }
       },
       {"row-missed"}},
      {"insert-missing",
       [](Pour& p) {
         p.plan.thickness = 0.31;
         p.plan.limits = R"("volume_tolerance":0.3)";
       },
       {}},
      {"insert-sparse", [](Pour& p) { p.at(3000, insert(2, 0, 0.5)); }, {}},
      {"insert-long",
       [](Pour& p) {
         std::string held = insert(2, 0, 0.25);
         held.replace(held.find(":10,"), 4, ":16,");
         p.at(3000, held);
       },
       {}},
      {"clock-step",
       [](Pour& p) { p.at(200, clocked(p, 200, 200)).at(303, clocked(p, 300, 303)); },
       {}},
      {"run-unended",
       [](Pour& p) {
         p.without(R"("do":"rest","element":"W1","row":"R3")").at(5200, take_down("R3"));
       },
       {}},
      {"ready-open", [](Pour& p) { p.at(70, ready("ties tight", false)); }, {}},
      {"unsigned", [](Pour& p) { p.without("inspector"); }, {}},
      {"entered-before", [](Pour& p) { p.at(206, clocked(p, 200, 200)); }, {}},
      {"kept-late",
       [](Pour& p) {
         p.at(200, clocked(p, 200, 200));
         p.in_book = [](std::vector<Event>& events) {
           for (Event& event : events) {
             if (event.entry) event.entry->kept = after(event.entry->wall, seconds(121));
           }
         };
       },
       {}},
      {"from-script",
       [](Pour& p) {
         p.at(200, clocked(p, 200, 200));
         p.at(300, replaced(clocked(p, 300, 5000), "b1", "script"));
       },
       {}},
  };
  return all;
}

}  // namespace rb::test
