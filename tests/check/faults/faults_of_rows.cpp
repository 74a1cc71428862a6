#include <fmt/format.h>

#include "faults.h"

namespace rb::test {

namespace {

const Expected kNoRows{"", {}, "a deck of this kind has no rows"};
const std::string kJoint = "the row was to work the joint below as well";

// More of the inverter, at the end of its fields.
void powered(Pour& p, const std::string& more) {
  const std::string last = R"("length":25})";
  p.plan.more.insert(p.plan.more.find(last) + last.size(), more);
}

std::string hung(const std::string& row) {
  return R"("do":"hang","element":"W1","row":")" + row;
}

}  // namespace

std::vector<Fault> faults_of_rows() {
  return {
      {"a row never ran",
       [](Pour& p, ElementKind) { never_ran(p, "R2"); },
       {Expected{"row-missed", {"dose-low", "knit-late"}, kJoint},
        {"row-missed", {"face-low"}, "the face it alone reaches got nothing"},
        kNoRows}},
      {"a row was rested after 20 s",
       [](Pour& p, ElementKind) {
         never_ran(p, "R2");
         p.ran("R2", 3300, 3320);
       },
       {Expected{"run-short", {"dose-low"}, "what it alone reaches got too little"},
        {"run-short", {"face-low"}, "the face it alone reaches got too little"},
        kNoRows}},
      {"nobody tapped REST",
       [](Pour& p, ElementKind) { p.without(R"("do":"rest","element":"W1","row":"R4")"); },
       {Expected{"run-unended", {"run-long"}, "as vibration it counts to the next event"},
        {"run-unended", {"run-long"}, "as vibration it counts to the next event"},
        kNoRows}},
      {"nobody tapped REST early on",
       [](Pour& p, ElementKind) { p.without(R"("do":"rest","element":"W1","row":"R1")"); },
       {Expected{
            "run-unended",
            {"run-long", "dose-high", "head-high", "power-over"},
            "it loads form and power until the close; as vibration to the next event, 900 s later"},
        {"run-unended",
         {"run-long", "head-high", "power-over"},
         "it loads form and power until the close; as vibration to the next event, 150 s later"},
        kNoRows}},
      {"a row ran 6 minutes",
       [](Pour& p, ElementKind) {
         never_ran(p, "R2");
         p.ran("R2", 3300, 3660);
       },
       {Expected{"run-long"}, {"run-long"}, kNoRows}},
      {"a row ran a quarter of an hour",
       [](Pour& p, ElementKind) {
         never_ran(p, "R4");
         p.later(7150, 1000).ran("R4", 6900, 7800);
       },
       {Expected{"run-long", {"dose-high"}, "the concrete got what the row ran"},
        {"run-long", {"dose-high"}, "the concrete got what the row ran"},
        kNoRows}},
      {"a row ran after the concrete had set",
       [](Pour& p, ElementKind) {
         never_ran(p, "R4");
         p.later(7150, 36000).ran("R4", 40000, 40100);
       },
       {Expected{"dose-low", {"knit-late"}, kJoint}, {"face-low"}, kNoRows}},
      {"a row ran before its concrete came and not again",
       [](Pour& p, ElementKind) {
         never_ran(p, "R1");
         p.ran("R1", 300, 400);
       },
       {Expected{"row-empty", {"row-missed", "dose-low"}, "that run was the one it was to make"},
        {"row-empty", {"row-missed", "face-low"}, "that run was the one it was to make"},
        kNoRows}},
      {"the last row ran before its concrete came and not again",
       [](Pour& p, ElementKind) {
         never_ran(p, "R4");
         p.ran("R4", 300, 400);
         if (p.plan.kind == "column") p.without(R"("do":"insert","element":"W1","lift":4)");
       },
       {Expected{"row-empty", {"unvibrated", "knit-late"}, "nothing else works the top lift"},
        {"row-empty", {"unvibrated", "knit-late"}, "nothing else worked the top lift"},
        kNoRows}},
      {"a row was never logged as hung",
       [](Pour& p, ElementKind) { p.without(hung("R2")); },
       {Expected{"cable-open"}, {"cable-open"}, kNoRows}},
      {"safety cables were not confirmed",
       [](Pour& p, ElementKind) { p.changed(hung("R2"), R"("cables":true)", R"("cables":false)"); },
       {Expected{"cable-open"}, {"cable-open"}, kNoRows}},
      {"motors planned too far apart",
       [](Pour& p, ElementKind kind) {
         p.plan.rows[1] =
             kind == ElementKind::wall
                 ? row_text("R2", 0.9, {{"R2-1", 1}, {"R2-2", 3.3}}, "[2]")
                 : row_text("R2", 0.9, {{"R2-1", 0.05, 0.1}, {"R2-2", 0.45, 0.2}}, "[2]");
       },
       {Expected{"row-far", {"dose-low", "knit-late"}, "what no motor reaches is not worked"},
        {"row-far", {"face-low"}, "what no motor reaches is not worked"},
        kNoRows}},
      {"one motor was missing on a row",
       [](Pour& p, ElementKind) { p.at(2000, hang("R2", {"R2-1"})); },
       {Expected{"dose-low", {"knit-late"}, kJoint}, {"face-low"}, kNoRows}},
      {"two rows ran at once on an inverter for one",
       [](Pour& p, ElementKind) { p.ran("R2", 3400, 3410).ran("R3", 3395, 3405); },
       {Expected{"power-over"}, {"power-over"}, kNoRows}},
      {"a motor was overdriven",
       [](Pour& p, ElementKind) {
         p.changed(R"("do":"run","element":"W1","row":"R2")", "6000", "6500");
       },
       {Expected{"speed-out"}, {"speed-out"}, kNoRows}},
      {"a motor crept",
       [](Pour& p, ElementKind) {
         p.changed(R"("do":"run","element":"W1","row":"R2")", "6000", "2950");
       },
       {Expected{"speed-out", {"run-short", "dose-low"}, "a second at 2950 vpm counts 0.38 s"},
        {"speed-out", {"run-short", "face-low"}, "a second at 2950 vpm counts 0.38 s"},
        kNoRows}},
      {"an inverter was set slow",
       [](Pour& p, ElementKind) {
         p.changed(R"("do":"run","element":"W1","row":"R2")", "6000", "3600");
       },
       {Expected{"run-short", {"dose-low"}, "a second at 3600 vpm counts 0.56 s"},
        {"run-short", {"face-low"}, "a second at 3600 vpm counts 0.56 s"},
        kNoRows}},
      {"an inverter tripped as a row ran, and it was not run again",
       [](Pour& p, ElementKind) { p.at(3330, R"("do":"trip","inverter":"I1")"); },
       {Expected{"trip-open", {"run-short", "dose-low"}, "the trip ended its run"},
        {"trip-open", {"run-short", "face-low"}, "the trip ended its run"},
        kNoRows}},
      {"a row was set to half its working speed",
       [](Pour& p, ElementKind) {
         // (2400 / 4800)^2: a quarter of its seconds; under 3000 vpm besides.
         p.changed(R"("do":"run","element":"W1","row":"R2")", R"(,"vpm":6000)", "");
         p.at(3290, R"("do":"speed","inverter":"I1","vpm":2400)");
         p.at(3450, R"("do":"speed","inverter":"I1","vpm":6000)");
       },
       {Expected{"speed-out", {"run-short", "dose-low"}, "a second at 2400 vpm counts 0.25 s"},
        {"speed-out", {"run-short", "face-low"}, "a second at 2400 vpm counts 0.25 s"},
        kNoRows}},
      {"the trunk was too thin for the motors on it",
       [](Pour& p, ElementKind) { powered(p, R"(,"trunk":{"mm2":1.5,"length":10})"); },
       {Expected{"volts-low"}, {"volts-low"}, kNoRows}},
      {"the generator was too small",
       // Two motors of 7.5 A at 42 V take 1.09 kVA; 1.3 kVA derated by 0.8 gives 1.04.
       [](Pour& p, ElementKind) { powered(p, R"(,"generator":{"kva":1.3})"); },
       {Expected{"generator-over"}, {"generator-over"}, kNoRows}},
      {"the plan gives no cord",
       [](Pour& p, ElementKind) {
         const std::string was = R"(,"cable":{"mm2":4,"length":25})";
         p.plan.more.replace(p.plan.more.find(was), was.size(), "");
       },
       {Expected{kGap + "cord"}, {kGap + "cord"}, kNoRows}},
      {"the cord was too long",
       [](Pour& p, ElementKind) {
         const std::string was = R"("length":25)";
         p.plan.more.replace(p.plan.more.find(was), was.size(), R"("length":40)");
       },
       {Expected{"volts-low"}, {"volts-low"}, kNoRows}},
      {"a low row ran under a deep head",
       [](Pour& p, ElementKind) { p.ran("R1", 7020, 7030); },
       {Expected{"head-high"}, {"head-high"}, kNoRows}},
      {"a motor came loose",
       [](Pour& p, ElementKind) { p.at(3350, R"("do":"moved","what":"motor","element":"W1")"); },
       {Expected{"form-moved"}, {"form-moved"}, kNoRows}},
      {"nobody logged how fast a row turned",
       [](Pour& p, ElementKind) {
         p.changed(R"("do":"run","element":"W1","row":"R2")", R"(,"vpm":6000)", "");
       },
       {Expected{kGap + "speed"}, {kGap + "speed"}, kNoRows}},
      {"the plan does not tell what a motor draws",
       [](Pour& p, ElementKind) {
         p.plan.more = p.plan.more.substr(0, p.plan.more.find(R"(,"motor_type")"));
       },
       {Expected{kGap + "power", {}, "", {"motor-type"}},
        {kGap + "power", {}, "", {"motor-type"}},
        kNoRows}},
  };
}

}  // namespace rb::test
