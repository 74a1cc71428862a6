// dose-high: a spot was vibrated far longer than it needs.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

constexpr double kTimesMost = 4;

void look_dose_high(const Look& look, const Rule& rule, Findings& out) {
  const Seconds limit = look.plan().limits.dose_max.value * kTimesMost;
  for (std::size_t e = 0; e < look.concrete.size(); ++e) {
    MostShaken most;
    for (const LiftLook* lift : look.concrete[e]) {
      if (lift->most.dose > most.dose) most = lift->most;
    }
    if (most.dose <= limit) continue;
    Finding f = found(rule);
    f.element = e;
    f.bay = most.bay;
    f.measured = in_seconds(most.dose);
    f.limit = in_seconds(limit);
    f.unit = "s";
    f.source = limit_source(rule, look.plan().limits.dose_max.from);
    f.says = fmt::format("{}: {:.0f} s at x {:.2f} m, z {:.2f} m in bay {}, over {:.0f} s",
                         look.plan().elements[e].id.text, *f.measured, in_metres(most.x),
                         in_metres(most.z), most.bay + 1, *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kDoseHigh{
    {"dose-high", Weight::note, "mortar driven to the form and stone sunk: streaks, segregation",
     "common practice, no source", "4 x dose_max_s (480 s)",
     "plan, by the engineer, through dose_max_s",
     "Move the motors up sooner; look for streaks when stripped"},
    look_dose_high};

}  // namespace rb
