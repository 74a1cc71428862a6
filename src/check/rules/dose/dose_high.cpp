// dose-high: a spot was vibrated far longer than it needs.
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
    f.measured = amount(most.dose);
    f.limit = amount(limit);
    f.source = limit_source(rule, look.plan().limits.dose_max.from);
    f.sentence = said("{element}: {measured} at x {x}, z {z} in bay {bay}, over {limit}");
    f.facts = {{"x", amount(most.x)}, {"z", amount(most.z)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kDoseHigh{{"dose-high", said("Very long vibration"), Severity::note, Cost::face,
                             "mortar driven to the form and stone sunk: streaks, segregation",
                             said("common practice, no source"), "4 x dose_max_s (480 s)",
                             "plan, by the engineer, through dose_max_s",
                             said("Move the motors up sooner; look for streaks when stripped")},
                            look_dose_high};

}  // namespace rb
