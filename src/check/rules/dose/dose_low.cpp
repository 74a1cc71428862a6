// dose-low: too much of a lift got less vibration than it needs while it was plastic.
#include "check/rule.h"
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

// The share of a lift that got too little and where it is worst.
struct Shortfall {
  double under = 0;
  WorstPlace worst;
};
// Without the bays that nothing vibrated: those are told by a rule of their own. None: within the
// limit.
std::optional<Shortfall> shortfall(const Look& look, std::size_t i) {
  const LiftReport& report = look.lifts[i];
  const Limits& limits = look.plan().limits;
  if (*report.under_share <= limits.under_share_max.value) return std::nullopt;
  LiftLook& lift = *look.lift_looks[i];
  const BareBays bare = bare_bays(look, report);
  if (bare.bays.empty()) return Shortfall{*report.under_share, lift.worst_place()};
  auto bands = lift.bands;
  for (const std::size_t bay : bare.bays) bands[bay].to = bands[bay].from;
  const auto under =
      trade::dose_shares(lift.field, bands, limits.dose_min.value).under_share().value_or(0);
  if (under <= limits.under_share_max.value) return std::nullopt;
  return Shortfall{under, worst_place(lift.field, bands, limits.dose_min.value)};
}

void look_dose_low(const Look& look, const Rule& rule, Findings& out) {
  const Limits& limits = look.plan().limits;
  for (std::size_t i = 0; i < look.lifts.size(); ++i) {
    const LiftReport& report = look.lifts[i];
    if (!report.under_share || !look.settled(report) || bare_bays(look, report).all) continue;
    look_at_zones(look, rule, i, out);
    const auto some = shortfall(look, i);
    if (!some) continue;
    const LiftState& lift = look.lift(report);
    const WorstPlace& worst = some->worst;
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.bay = worst.bay;
    const auto sides = judged_sides(look.element(report));
    if (sides.size() == 1) f.side = sides.front();
    f.from = report.placed_from;
    f.to = lift.next_start.value_or(look.asof.at);
    f.measured = share(some->under);
    f.limit = share(limits.under_share_max.value);
    f.source = limit_source(rule, limits.under_share_max.from);
    f.ref = lift.ref;
    const trade::Patch& box = worst.patch.box;
    f.sentence = said(
        "{element} lift {lift}: {measured} of the concrete got less than {dose_min} (limit "
        "{limit}), "
        "most of it in bay {bay}; worst patch {w} x {h} at x {x}, z {z}, least {least}");
    f.facts = {{"dose_min", amount(limits.dose_min.value), Rounding::up},
               {"w", amount(box.w)},
               {"h", amount(box.h)},
               {"x", amount(box.x)},
               {"z", amount(box.z)},
               {"least", amount(worst.patch.least), Rounding::down}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kDoseLow{
    {"dose-low", said("Too little vibration"), Severity::mend,
     "concrete that was not vibrated long enough while plastic: honeycomb, bug holes",
     said("common practice, no source (90 to 120 s a lift with form vibrators)"),
     "dose_min_s 90 s over all but under_share_max 2 % of a lift", "plan, by the engineer",
     said("While it is still plastic run the rows that reach it, or insert; else mark the place to "
          "be "
          "inspected when stripped")},
    look_dose_low};

}  // namespace rb
