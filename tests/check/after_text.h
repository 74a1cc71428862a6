// Lines of what comes after the last lift, and a lift to say them of: for the rules' tests.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "pour_text.h"

namespace rb::test {

// One lift up to 0.6 m, its last concrete in at 600 s.
inline Pour a_lift_of(const std::string& element, const std::string& mix = kQ,
                      const std::string& kind = "") {
  PlanText plan;
  plan.element = element;
  plan.mix += mix;
  if (!kind.empty()) {
    plan.kind = kind;
    plan.height = 4;
    plan.thickness = 0.6;
    plan.lifts = "[0.6]";
    plan.rows.clear();
  }
  return Pour{plan}.placed(1, 0, 600, 0.6);
}

inline std::string concrete(double degrees, const std::string& place = "") {
  return fmt::format(R"("do":"concrete-temp","element":"W1","temp":{}{})", degrees, place);
}
inline const std::string kStrip = R"("do":"strip","element":"W1","side":"near")";
inline const std::string kCure = R"("do":"cure-start","element":"W1","how":"wet burlap")";
inline const std::string kCureEnd = R"("do":"cure-end","element":"W1")";
// 10 MPa at 20 h of 20 degC.
inline const std::string kStrength =
    R"("strip_strength_mpa":10,"strength_curve":[[10,4],[20,10],[48,20]])";
inline constexpr double kHour = 3600;

inline std::string specimen(const std::string& id, double days, double strength) {
  return fmt::format(R"("do":"specimen","specimen":"{}","age_days":{},"strength_mpa":{})", id, days,
                     strength);
}

inline bool untold(const Checked& seen, const std::string& what) {
  return std::any_of(seen.report.not_judged.begin(), seen.report.not_judged.end(),
                     [&](const NotJudged& gap) { return gap.what == what; });
}

}  // namespace rb::test
