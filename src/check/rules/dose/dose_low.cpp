// dose-low: too much of a lift got less vibration than it needs while it was plastic.
#include "check/rule.h"
#include "check/shortfall.h"
#include "check/vibrated.h"

namespace rb {

namespace {

// Crowded places that have a least dose of their own.
void look_at_zones(const Look& look, const Rule& rule, std::size_t i, Findings& out) {
  const LiftReport& report = look.lifts[i];
  const LiftLook& lift = *look.lift_looks[i];
  const Element& element = look.element(report);
  for (const CongestedZone& zone : element.congested) {
    if (!zone.dose_min) continue;
    const trade::DoseField field = trade::inside(lift.judged, zone);
    const trade::DoseShares shares = trade::dose_shares(field, lift.bands, *zone.dose_min);
    const Limit<double>& limit = look.plan().limits.under_share_max;
    if (shares.under_share().value_or(0) <= limit.value) continue;
    const auto patch = trade::worst_patch(field, lift.bands, *zone.dose_min);
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    if (patch) f.bay = element.bay_at(patch->box.x + patch->box.w * 0.5);
    f.from = report.placed_from;
    f.to = look.lift(report).next_start.value_or(look.asof.at);
    f.measured = share(*shares.under_share());
    f.limit = share(limit.value);
    f.source = {
        .code = Source::Code::plan, .field = "dose_min_s", .words = said(" of the congested zone")};
    f.ref = look.lift(report).ref;
    f.sentence = said(
        "{element} lift {lift}: {measured} of the congested zone at x {x}, z {z} got less than its "
        "own "
        "{dose_min} (limit {limit}), least {least}");
    f.facts = {{"x", amount(zone.x)},
               {"z", amount(zone.z)},
               {"dose_min", amount(*zone.dose_min), Rounding::up},
               {"least", amount(*shares.least), Rounding::down}};
    out.push_back(std::move(f));
  }
}

void look_dose_low(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t i = 0; i < look.lifts.size(); ++i) {
    const LiftReport& report = look.lifts[i];
    if (!report.under_share || !look.settled(report) || bare_bays(look, report).all) continue;
    look_at_zones(look, rule, i, out);
    if (const auto some = shortfall(look, i)) {
      out.push_back(shortfall_finding(look, rule, i, *some));
    }
  }
}

}  // namespace

extern const Rule kDoseLow{
    {"dose-low", said("Too little vibration"), Severity::mend, Cost::inside,
     "concrete that was not vibrated long enough while plastic: honeycomb, bug holes",
     said("common practice, no source (90 to 120 s a lift with form vibrators)"),
     "dose_min_s 90 s over all but under_share_max 2 % of a lift", "plan, by the engineer",
     said("While it is still plastic run the rows that reach it, or insert; else mark the place to "
          "be "
          "inspected when stripped")},
    look_dose_low};

}  // namespace rb
