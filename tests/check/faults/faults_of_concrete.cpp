#include <fmt/format.h>

#include "faults.h"

namespace rb::test {

namespace {

const std::string kT1 = R"("do":"truck","ticket":"T1")";
const std::string kTest = R"("do":"test","ticket":"T1")";

const std::string kConcrete20 = R"("do":"concrete-temp","element":"W1","temp":20)";

// The first load's test, one figure changed.
std::function<void(Pour&, ElementKind)> tested(const std::string& was, const std::string& is) {
  return [=](Pour& p, ElementKind) { p.changed(kTest, was, is); };
}

}  // namespace

std::vector<Fault> faults_of_concrete() {
  const std::string kFull = "a row that runs brings the full head the form is too weak for";
  const Expected no_pressure{"", {}, "a deck's form bears its depth, no pressure that rises"};
  const Expected no_joint{"", {}, "a deck is one layer"};
  return {
      {"lifts placed too fast, one on the other",
       [](Pour& p, ElementKind) { p.later(kSecondHalf, -600); },
       {Expected{"rise-fast"}, {"rise-fast"}, no_pressure}},
      {"the plan does not tell what the form bears",
       [](Pour& p, ElementKind) { p.plan.element = R"("rise_limit":1.5)"; },
       {Expected{kGap + "head"}, {kGap + "head"}, no_pressure}},
      {"the form is too weak at any rate",
       [](Pour& p, ElementKind) { p.plan.element = R"("form_rating_kpa":25,"rise_limit":1.5)"; },
       {Expected{"form-short", {"head-high"}, kFull},
        {"form-short", {"head-high"}, kFull},
        no_pressure}},
      {"a wet load", tested(R"("slump":0.12)", R"("slump":0.17)"), everywhere("slump-out")},
      {"a load so wet that it runs",
       tested(R"("slump":0.12)", R"("slump":0.2)"),
       {Expected{"slump-out", {"form-short"}, "the method holds no longer: full liquid head"},
        {"slump-out", {"form-short"}, "the method holds no longer: full liquid head"},
        {"slump-out"}}},
      {"a stiff load", tested(R"("slump":0.12)", R"("slump":0.08)"), everywhere("slump-out")},
      {"too much air", tested(R"("air":5)", R"("air":7)"), everywhere("air-out")},
      {"too little air", tested(R"("air":5)", R"("air":3)"), everywhere("air-out")},
      {"a light load", tested(R"("density":2400)", R"("density":2300)"), everywhere("density-out")},
      {"a heavy load", tested(R"("density":2400)", R"("density":2500)"), everywhere("density-out")},
      {"hot concrete", tested(R"("temp":18)", R"("temp":36)"), everywhere("temp-out")},
      {"cold concrete", tested(R"("temp":18)", R"("temp":8)"), everywhere("temp-out")},
      {"a load too old at the end of its discharge",
       [](Pour& p, ElementKind kind) {
         p.changed(kT1, p.moment(-600), p.moment(kind == ElementKind::deck ? -4000 : -1900));
       },
       everywhere("load-old")},
      {"water added on site",
       [](Pour& p, ElementKind) {
         p.changed(kT1, R"("mix":"A")", R"("mix":"A","water_added":0.02)");
       },
       everywhere("water-added")},
      {"a part of a load went back to the plant",
       [](Pour& p, ElementKind kind) {
         const bool column = kind == ElementKind::column;
         p.changed(kT1, R"("mix":"A")",
                   column ? R"("mix":"A","returned":0.2)" : R"("mix":"A","returned":0.6)");
       },
       everywhere("volume-off")},
      {"no temperature measured",
       [](Pour& p, ElementKind) { p.changed(R"("do":"test")", R"("temp":18,)", ""); },
       everywhere("load-untested")},
      {"no ticket logged",
       [](Pour& p, ElementKind) { p.without(R"("do":"truck")").without(R"("do":"discharge")"); },
       everywhere(kGap + "load")},
      {"more concrete than the form holds",
       [](Pour& p, ElementKind kind) {
         const std::string was = kind == ElementKind::wall     ? R"("volume":1.2)"
                                 : kind == ElementKind::column ? R"("volume":0.432)"
                                                               : R"("volume":2.4)";
         p.changed(kT1, was,
                   fmt::format(R"("volume":{})", kind == ElementKind::wall     ? 1.5
                                                 : kind == ElementKind::column ? 0.6
                                                                               : 3.0));
       },
       everywhere("volume-off")},
      {"a joint left too long",
       [](Pour& p, ElementKind) { p.later(kSecondHalf, 43200); },
       {Expected{"knit-late"}, {"knit-late"}, no_joint}},
      {"a joint about to set",
       [](Pour& p, ElementKind) { p.later(kSecondHalf, 43200); },
       {Expected{"knit-near"}, {"knit-near"}, no_joint},
       31000},
      {"a bay left while the one beside it set",
       [](Pour& p, ElementKind kind) {
         if (kind == ElementKind::deck) {
           p.later(1490, 43200);
           return;
         }
         p.changed(R"("do":"lift-end","element":"W1","lift":4)", R"("height":2.4)",
                   R"("height":2.4,"bay":1)");
         p.later(7100, 43200).at(6890, hang("R4", {"R4-1"}));
         p.load("T3", 0.3, 46000, 48000, 50000);
         p.changed(R"("ticket":"T2","mix")", R"("volume":1.2)", R"("volume":0.9)");
         p.at(6001, bay_start(4, 1)).at(48100, bay_start(4, 2)).at(49000, lift_end(4, 2.4, 2));
         p.at(49010, hang("R4", {"R4-2"})).ran("R4", 49020, 49120);
       },
       {Expected{"knit-late"}, {"", {}, "a column is one bay"}, {"knit-late"}}},
      {"a lift deeper than planned",
       [](Pour& p, ElementKind kind) {
         if (kind == ElementKind::deck) {
           p.changed(R"("lift-end")", R"("height":0.2,"bay":1)", R"("height":0.25,"bay":1)");
           p.changed(kT1, R"("volume":2.4)", R"("volume":3.0)");
           return;
         }
         p.changed(R"("do":"lift-end","element":"W1","lift":1)", R"("height":0.6)",
                   R"("height":0.7)");
       },
       everywhere("lift-deep")},
      {"a joint older than the contract allows",
       [](Pour& p, ElementKind kind) {
         const bool deck = kind == ElementKind::deck;
         if (!deck) p.later(kSecondHalf, 600);
         p.plan.element += deck ? R"("joint_age_max_s":600)" : R"(,"joint_age_max_s":1200)";
       },
       everywhere("joint-old")},
      {"stripped the same day",
       [](Pour& p, ElementKind) { p.at(9000, R"("do":"strip","element":"W1","side":"near")"); },
       everywhere("strip-early")},
      {"stripped before the strength it is to have",
       [](Pour& p, ElementKind) {
         p.plan.element += std::string{p.plan.element.empty() ? "" : ","} +
                           R"("strip_strength_mpa":10,"strength_curve":[[10,4],[20,10]])";
         p.at(8000, kConcrete20).at(79000, kConcrete20);
         p.at(79000, R"("do":"strip","element":"W1","side":"near")");
       },
       everywhere("strip-early")},
      {"stripped sooner than planned, with leave",
       [](Pour& p, ElementKind) {
         p.plan.element +=
             std::string{p.plan.element.empty() ? "" : ","} + R"("strip_after_s":86400)";
         p.at(80000, R"("do":"permit-strip","element":"W1","why":"the crane waits")");
         p.at(80100, R"("do":"strip","element":"W1","side":"near")");
       },
       everywhere("strip-early")},
      {"stripped without the leave the plan asks for",
       [](Pour& p, ElementKind) {
         p.plan.element +=
             std::string{p.plan.element.empty() ? "" : ","} + R"("strip_permit":true)";
         p.at(400000, R"("do":"strip","element":"W1","side":"near")");
       },
       everywhere("strip-leave")},
      {"a strip strength nothing can show",
       [](Pour& p, ElementKind) {
         p.plan.element +=
             std::string{p.plan.element.empty() ? "" : ","} + R"("strip_strength_mpa":10)";
         p.at(400000, R"("do":"strip","element":"W1","side":"near")");
       },
       everywhere(kGap + "strength")},
      {"curing begun late",
       [](Pour& p, ElementKind) {
         p.plan.element +=
             std::string{p.plan.element.empty() ? "" : ","} + R"("cure_start_within_s":3600)";
         p.at(12000, R"("do":"cure-start","element":"W1","how":"curing compound")");
       },
       everywhere("cure-late")},
      {"curing planned and never begun",
       [](Pour& p, ElementKind) {
         p.plan.element +=
             std::string{p.plan.element.empty() ? "" : ","} + R"("cure_start_within_s":3600)";
         p.at(20000, R"("do":"photo","element":"W1","name":"dry.jpg","bytes":9,"sha256":")" +
                         std::string(64, 'd') + '"');
       },
       everywhere("cure-late")},
      {"curing ended too soon",
       [](Pour& p, ElementKind) {
         p.plan.element +=
             std::string{p.plan.element.empty() ? "" : ","} + R"("cure_for_s":604800)";
         p.at(8000, R"("do":"cure-start","element":"W1")");
         p.at(300000, R"("do":"cure-end","element":"W1")");
       },
       everywhere("cure-short")},
      {"the hardening concrete froze in its first night",
       [](Pour& p, ElementKind) {
         p.at(40000, R"("do":"concrete-temp","element":"W1","temp":-2)");
       },
       everywhere("cure-temp")},
      {"the hardening concrete got too hot",
       [](Pour& p, ElementKind) {
         p.at(60000, R"("do":"concrete-temp","element":"W1","temp":74)");
       },
       everywhere("cure-temp")},
      {"a specimen below the strength of the mix",
       [](Pour& p, ElementKind) {
         p.plan.mix += R"(,"strength_mpa":40)";
         p.changed(kTest, R"("air":5)", R"("air":5,"specimens":["S1","S2"])");
         p.at(2419200, R"("do":"specimen","specimen":"S1","age_days":28,"strength_mpa":36)");
       },
       everywhere("specimen-low")},
      {"a dry wind over fresh concrete",
       [](Pour& p, ElementKind) {
         p.at(900, R"("do":"air-temp","temp":20,"humidity":15,"wind":12)");
       },
       {Expected{"", {}, "a wall stands in its form"},
        {"", {}, "a column stands in its form"},
        {"evaporation"}}},
      {"nobody read humidity and wind",
       [](Pour& p, ElementKind kind) {
         if (kind == ElementKind::deck) p.without(R"("do":"air-temp")");
       },
       {Expected{"", {}, "a wall stands in its form"},
        {"", {}, "a column stands in its form"},
        {kGap + "evaporation"}}},
      {"too few vibrators at once",
       [](Pour& p, ElementKind) {
         p.without(R"("do":"lift-end","element":"W1","lift":1,"height":0.2,"bay":1)");
         p.at(700, lift_end(1, 0.2, 1));
       },
       {Expected{"", {}, "rows consolidate a thin wall"},
        {"", {}, "a column that rises in time gives one vibrator enough to do"},
        {"heads-few"}}},
      {"insertions that tell no number of vibrators",
       [](Pour& p, ElementKind) { p.changed(R"("do":"insert")", R"(,"heads":1)", ""); },
       {Expected{"", {}, "rows consolidate a thin wall"}, {kGap + "heads"}, {kGap + "heads"}}},
      {"the start of a bay not tapped",
       [](Pour& p, ElementKind kind) {
         if (kind == ElementKind::deck) {
           p.without(R"("do":"bay-start","element":"W1","lift":1,"bay":2)");
           return;
         }
         p.changed(R"("do":"lift-end","element":"W1","lift":2)", R"("height":1.2)",
                   R"("height":1.2,"bay":1)");
         p.at(2401, bay_start(2, 1)).at(3301, lift_end(2, 1.2, 2));
       },
       {Expected{"front-unknown", {}, {}, {"rise"}},
        {"", {}, "a column is one bay"},
        {"front-unknown", {}, {}, {"rise"}}}},
      {"a top that fell",
       [](Pour& p, ElementKind kind) {
         p.at(kind == ElementKind::deck ? 2420 : 3350,
              kind == ElementKind::deck ? top(0.1, 1) : top(0.9));
       },
       everywhere("top-fell")},
      {"the form moved",
       [](Pour& p, ElementKind) { p.at(2350, R"("do":"moved","what":"form","element":"W1")"); },
       everywhere("form-moved")},
  };
}

}  // namespace rb::test
