// lift-deep: a lift was placed deeper than planned.
#include "check/rule.h"

namespace rb {

namespace {

constexpr double kDeeper = 1.1;
constexpr Length kUnplanned = metres(0.5);

void look_lift_deep(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    const Element& element = look.element(report);
    const auto number = static_cast<std::size_t>(report.lift);
    const bool planned = number <= element.lifts.size();
    Length limit = kUnplanned;
    if (planned) {
      const Length below = number > 1 ? element.lifts[number - 2] : Length{};
      limit = (element.lifts[number - 1] - below) * kDeeper;
    }
    Length deepest;
    std::size_t where = 0;
    const LiftState& lift = look.lift(report);
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      if (lift.top[bay] - lift.bottom[bay] <= deepest) continue;
      deepest = lift.top[bay] - lift.bottom[bay];
      where = bay;
    }
    if (deepest <= limit + millimetres(1)) continue;
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.bay = where;
    f.from = report.placed_from;
    f.to = report.placed_to;
    f.measured = amount(deepest);
    f.limit = amount(limit);
    f.source = planned ? Source{.code = Source::Code::plan,
                                .field = "lifts",
                                .words = said(", plus a tenth (common practice, no source)")}
                       : Source{.code = Source::Code::standard,
                                .words = said("ACI 309R, about {0.5 m} (from memory)")};
    f.ref = lift.ref;
    f.sentence = said("{element} lift {lift}: {measured} deep in bay {bay}, limit {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kLiftDeep{
    {"lift-deep", said("Lift too deep"), Severity::mend, Cost::perhaps,
     "a lift too deep for the vibration to let the air out of it",
     said("planned lift plus a tenth (common practice, no source); without a plan {0.5 m} "
          "(ACI 309R, from memory)"),
     "1.1 x the planned depth", "plan, by the engineer",
     said("Vibrate this lift to the long end of its band; place the next one thinner")},
    look_lift_deep};

}  // namespace rb
