// front-unknown: a lift filled bay after bay, and nobody said when concrete came to a bay.
#include "check/rule.h"

namespace rb {

namespace {

void look_front_unknown(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    const LiftState& lift = look.lift(report);
    std::string bays;
    std::optional<std::size_t> only;
    std::size_t missing = 0;
    for (std::size_t bay = 0; bay < lift.bays.size(); ++bay) {
      if (!lift.start_missing(bay)) continue;
      bays += (bays.empty() ? "" : ", ") + std::to_string(bay + 1);
      ++missing;
      only = bay;
    }
    if (missing == 0) continue;
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    if (missing == 1) f.bay = only;
    f.from = report.placed_from;
    f.to = report.placed_to;
    f.ref = lift.ref;
    f.sentence = said(
        "{element} lift {lift}: start of bay {bays} not tapped: it may have risen faster, and got "
        "less vibration, than shown");
    f.facts = {{"bays", bays}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kFrontUnknown{
    {"front-unknown", said("Start of a bay not tapped"), Severity::mend, Cost::paper,
     "a rise faster than the form bears that the log does not show",
     said("rate of rise counts from when concrete comes (common practice, no source)"),
     "in a lift read bay by bay, a bay-start for each bay before its first higher reading",
     "nobody", said("Tap the bay when concrete comes to it; correct the time of a tap made late")},
    look_front_unknown};

}  // namespace rb
