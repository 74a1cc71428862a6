// unvibrated: a lift's concrete was covered, or the pour closed, with no vibration of it at all.
#include "check/rule.h"
#include "check/vibrated.h"

namespace rb {

namespace {

void tell(const Look& look, const Rule& rule, const LiftReport& report,
          std::optional<std::size_t> bay, Findings& out) {
  const LiftState& lift = look.lift(report);
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.bay = bay;
  f.from = report.placed_from;
  f.to = lift.next_start.value_or(look.asof.at);
  f.ref = lift.ref;
  f.sentence = bay ? said(
                         "{element} lift {lift} bay {bay}: no row ran on it and no insertion was "
                         "logged")
                   : said("{element} lift {lift}: no row ran on it and no insertion was logged");
  out.push_back(std::move(f));
}

void look_unvibrated(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    const BareBays bare = bare_bays(look, report);
    if (bare.all) {
      tell(look, rule, report, std::nullopt, out);
      continue;
    }
    for (const std::size_t bay : bare.bays) tell(look, rule, report, bay, out);
  }
}

}  // namespace

extern const Rule kUnvibrated{
    {"unvibrated", said("Not vibrated at all"), Severity::stop, Cost::inside,
     "concrete that nothing consolidated: honeycomb right through",
     said("ACI 309R: concrete that is not self-consolidating is vibrated (from memory)"),
     "some vibration of every bay of every lift", "nobody",
     said("Stop; vibrate it now if it is still plastic, log what was done; else call the engineer "
          "before it is covered")},
    look_unvibrated};

}  // namespace rb
