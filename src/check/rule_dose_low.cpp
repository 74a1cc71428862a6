// dose-low: too much of a lift got less vibration than it needs while it was plastic.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

// Crowded places that have a least dose of their own.
void look_at_zones(const Look& look, const Rule& rule, std::size_t i, Findings& out) {
  const LiftReport& report = look.lifts[i];
  const LiftLook& lift = *look.lift_looks[i];
  const Element& element = look.element(report);
  for (const CongestedZone& zone : element.congested) {
    if (!zone.dose_min) continue;
    const trade::DoseField field = trade::inside(lift.field, zone);
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
    f.measured = *shares.under_share();
    f.limit = limit.value;
    f.unit = "1";
    f.source = "plan: dose_min_s of the congested zone";
    f.ref = look.lift(report).ref;
    f.says = fmt::format(
        "{} lift {}: {:.1f} % of the congested zone at x {:.2f} m, z {:.2f} m got less than its "
        "own {:g} s (limit {:.1f} %), least {:.0f} s",
        element.id.text, report.lift, *f.measured * 100, in_metres(zone.x), in_metres(zone.z),
        in_seconds(*zone.dose_min), *f.limit * 100, in_seconds(*shares.least));
    out.push_back(std::move(f));
  }
}

void look_dose_low(const Look& look, const Rule& rule, Findings& out) {
  const Limits& limits = look.plan().limits;
  for (std::size_t i = 0; i < look.lifts.size(); ++i) {
    const LiftReport& report = look.lifts[i];
    if (!report.under_share || !look.settled(report)) continue;
    look_at_zones(look, rule, i, out);
    if (*report.under_share <= limits.under_share_max.value) continue;
    const LiftState& lift = look.lift(report);
    const WorstPlace& worst = look.lift_looks[i]->worst_place();
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.bay = worst.bay;
    const auto sides = judged_sides(look.element(report));
    if (sides.size() == 1) f.side = sides.front();
    f.from = report.placed_from;
    f.to = lift.next_start.value_or(look.asof.at);
    f.measured = *report.under_share;
    f.limit = limits.under_share_max.value;
    f.unit = "1";
    f.source = limit_source(rule, limits.under_share_max.from);
    f.ref = lift.ref;
    const trade::Patch& box = worst.patch.box;
    f.says = fmt::format(
        "{} lift {}: {:.1f} % of the concrete got less than {:g} s (limit {:.1f} %), most of it in "
        "bay {}; worst patch {:.2f} x {:.2f} m at x {:.2f} m, z {:.2f} m, least {:.0f} s",
        look.element(report).id.text, report.lift, *report.under_share * 100,
        in_seconds(limits.dose_min.value), *f.limit * 100, worst.bay + 1, in_metres(box.w),
        in_metres(box.h), in_metres(box.x), in_metres(box.z), in_seconds(worst.patch.least));
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kDoseLow{
    {"dose-low", Weight::mend,
     "concrete that was not vibrated long enough while plastic: honeycomb, bug holes",
     "common practice, no source (90 to 120 s a lift with form vibrators)",
     "dose_min_s 90 s over all but under_share_max 2 % of a lift", "plan, by the engineer",
     "While it is still plastic run the rows that reach it, or insert; else mark the place to be "
     "inspected when stripped"},
    look_dose_low};

}  // namespace rb
