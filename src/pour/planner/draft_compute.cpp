// A drafted element worked out by the planner.
#include <algorithm>

#include "pour/planner/plan_draft.h"

namespace rb {

namespace {

std::size_t motors_fed(const std::vector<Inverter>& power) {
  std::size_t motors = 0;
  for (const Inverter& inverter : power) motors += inverter.motors.size();
  return motors;
}

bool same_feed(const std::vector<Inverter>& a, const std::vector<Inverter>& b) {
  if (a.empty() || b.empty()) return false;
  const Inverter& x = a.front();
  const Inverter& y = b.front();
  return x.volts == y.volts && x.max_amps == y.max_amps && x.cable == y.cable &&
         x.trunk == y.trunk && x.generator == y.generator && x.internal == y.internal;
}

}  // namespace

RowPattern pattern_of(const Element& element) {
  RowPattern pattern;
  if (element.rows.empty()) return pattern;
  const Row& first = element.rows.front();
  pattern.lowest = first.z;
  pattern.motors = static_cast<int>(first.motors.size());
  pattern.reach_x = first.motors.front().reach_x;
  pattern.reach_z = first.motors.front().reach_z;
  pattern.both_sides = element.has_rows(Side::near_side) && element.has_rows(Side::far_side);
  for (const Row& row : element.rows) {
    if (row.side == first.side && row.z > first.z) {
      pattern.apart = row.z - first.z;
      break;
    }
  }
  return pattern;
}

PlanWish wish_for(const PlanDraft& draft, std::size_t element) {
  const Element& e = draft.plan.elements[element];
  const RowPattern& pattern = draft.guesses[element].pattern;
  PlanWish wish = draft.wish;
  wish.element = e.id;
  wish.kind = e.kind;
  wish.length = e.length;
  wish.height = e.height;
  wish.thickness = e.thickness;
  wish.section = e.section;
  wish.thickness_top = e.thickness_top;
  wish.bays = e.bays;
  wish.openings = e.openings;
  wish.beams = e.beams;
  wish.batter_deg = e.batter_deg;
  // What was changed on the glass was given; lifts are made anew whatever stands there.
  const PlanWish usual;
  wish.given.load = wish.load != usual.load;
  wish.given.rise = wish.rise_wished != usual.rise_wished;
  wish.given.sides = true;
  wish.form_rating = e.form_rating.value_or(Pressure{});
  wish.form_mass = e.form_mass.value_or(wish.form_mass);
  wish.rise_limit = e.rise_limit;
  wish.both_sides = pattern.both_sides;
  wish.reach_x = pattern.reach_x;
  wish.reach_z = pattern.reach_z;
  wish.reach_pressure = e.reach_pressure;
  const Mix* mix = draft.plan.find(draft.wish.mix.id);
  if (mix == nullptr && !draft.plan.mixes.empty()) mix = &draft.plan.mixes.front();
  if (mix != nullptr) wish.mix = *mix;
  wish.method = draft.plan.pressure_method;
  wish.limits = draft.plan.limits;
  if (wish.cable && (wish.cable->section <= Area{} || wish.cable->length <= Length{})) {
    wish.cable.reset();
  }
  if (wish.trunk && (wish.trunk->section <= Area{} || wish.trunk->length <= Length{})) {
    wish.trunk.reset();
  }
  if (wish.generator && wish.generator->rating <= ApparentPower{}) wish.generator.reset();
  return wish;
}

Result<PlannedPour> compute(PlanDraft& draft, std::size_t element) {
  auto planned = plan_pour(wish_for(draft, element));
  if (!planned) return planned;
  Element& changed = draft.plan.elements[element];
  changed.lifts = planned->plan.elements.front().lifts;
  changed.rows = planned->plan.elements.front().rows;
  draft.guesses[element].lifts = true;
  draft.guesses[element].rows = !changed.rows.empty();
  draft.guesses[element].pattern = pattern_of(changed);
  if (changed.kind == ElementKind::deck) return planned;
  draft.plan.motor_type = planned->plan.motor_type;
  // Motors are named alike on every element: another element's feed of the same kind, for more of
  // them, feeds these, too.
  const bool others = draft.plan.elements.size() > 1;
  const auto& old = draft.plan.power;
  const auto& made = planned->plan.power;
  if (!others || !same_feed(old, made) || motors_fed(made) >= motors_fed(old)) {
    draft.plan.power = made;
  }
  return planned;
}

}  // namespace rb
