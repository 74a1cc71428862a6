#include "check/shortfall.h"

#include "check/vibrated.h"

namespace rb {

namespace {

std::optional<Shortfall> worst_of(const Look& look, std::size_t i, const trade::DoseField& field) {
  const Limits& limits = look.plan().limits;
  auto bands = look.lift_looks[i]->bands;
  for (const std::size_t bay : bare_bays(look, look.lifts[i]).bays) bands[bay].to = bands[bay].from;
  const auto under =
      trade::dose_shares(field, bands, limits.dose_min.value).under_share().value_or(0);
  if (under <= limits.under_share_max.value) return std::nullopt;
  return Shortfall{under, worst_place(field, bands, limits.dose_min.value)};
}

}  // namespace

std::optional<Shortfall> shortfall(const Look& look, std::size_t i) {
  const double under = look.lifts[i].under_share.value_or(0);
  LiftLook& lift = *look.lift_looks[i];
  if (under <= look.plan().limits.under_share_max.value) return std::nullopt;
  if (bare_bays(look, look.lifts[i]).bays.empty()) return Shortfall{under, lift.worst_place()};
  return worst_of(look, i, lift.judged);
}

std::optional<Shortfall> face_shortfall(const Look& look, std::size_t i) {
  const LiftLook& lift = *look.lift_looks[i];
  const double under =
      lift.shares.area.value() > 0 ? double{lift.rows_under / lift.shares.area} : 0.0;
  if (under <= look.plan().limits.under_share_max.value) return std::nullopt;
  if (bare_bays(look, look.lifts[i]).all) return std::nullopt;
  return worst_of(look, i, lift.field);
}

Finding shortfall_finding(const Look& look, const Rule& rule, std::size_t i,
                          const Shortfall& some) {
  const LiftReport& report = look.lifts[i];
  const LiftState& lift = look.lift(report);
  const Limits& limits = look.plan().limits;
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.bay = some.worst.bay;
  const auto sides = judged_sides(look.element(report));
  if (sides.size() == 1) f.side = sides.front();
  f.from = report.placed_from;
  f.to = lift.next_start.value_or(look.asof.at);
  f.measured = share(some.under);
  f.limit = share(limits.under_share_max.value);
  f.source = limit_source(rule, limits.under_share_max.from);
  f.ref = lift.ref;
  const trade::Patch& box = some.worst.patch.box;
  f.sentence = said(
      "{element} lift {lift}: {measured} of the concrete got less than {dose_min} (limit "
      "{limit}), "
      "most of it in bay {bay}; worst patch {w} x {h} at x {x}, z {z}, least {least}");
  f.facts = {{"dose_min", amount(limits.dose_min.value), Rounding::up},
             {"w", amount(box.w)},
             {"h", amount(box.h)},
             {"x", amount(box.x)},
             {"z", amount(box.z)},
             {"least", amount(some.worst.patch.least), Rounding::down}};
  return f;
}

}  // namespace rb
