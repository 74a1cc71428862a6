#include "check/beside.h"

#include <algorithm>
#include <tuple>

#include "pour/outlook/knit.h"

namespace rb {

std::optional<Beside> came_beside(const Look& look, const LiftReport& report, std::size_t bay,
                                  std::size_t beside) {
  const LiftState& lift = look.lift(report);
  const auto& tops = look.state.elements[report.element].tops;
  const Length low = lift.bottom[bay];
  const Length high = std::min(lift.top[bay], tops[beside].standing());
  if (high <= low) return std::nullopt;
  const Length z = (low + high) * 0.5;
  const auto came = tops[bay].reached(z);
  const auto stood = tops[beside].reached(z);
  if (!came || !stood || *came <= *stood) return std::nullopt;
  return Beside{*came, *stood};
}

namespace {

// Heights between which, up both, nothing bends: those of readings, and where what stands there
// sets otherwise than below.
std::vector<Length> heights_of(const trade::TopCurve& young, const trade::TopCurve& old,
                               const std::vector<trade::SetStep>& sets, Length low, Length high) {
  std::vector<Length> heights{low, high};
  const auto add = [&](Length z) {
    if (z > low && z < high) heights.push_back(z);
  };
  for (const trade::SurfacePoint& point : young.points()) add(point.height);
  for (const trade::SurfacePoint& point : old.points()) add(point.height);
  for (const trade::SetStep& step : sets) add(old.at(step.from));
  return heights;
}

void take_worse(std::optional<MetWorst>& worst, const Met& met) {
  if (!worst) worst = MetWorst{met, met};
  if (met.came - met.set > worst->by_set.came - worst->by_set.set) worst->by_set = met;
  if (met.came - met.stood > worst->by_age.came - worst->by_age.stood) worst->by_age = met;
}

}  // namespace

std::vector<MetWorst> came_upon(const Look& look, const LiftReport& report) {
  std::vector<MetWorst> all;
  const LiftState& lift = look.lift(report);
  for (std::size_t e = 0; e < look.plan().elements.size(); ++e) {
    if (e == report.element || !meet(look.element(report), look.plan().elements[e])) continue;
    std::optional<MetWorst> worst;
    const auto& sets = look.faces[e].sets;
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      const trade::TopCurve& young = look.state.elements[report.element].tops[bay];
      for (const trade::TopCurve& old : look.state.elements[e].tops) {
        const Length low = lift.bottom[bay];
        const Length high = std::min(lift.top[bay], old.standing());
        if (high <= low) continue;
        for (const Length& z : heights_of(young, old, sets, low, high)) {
          // Just above a reading, and just below it.
          for (const auto& [came, stood] : {std::pair{young.covered(z), old.covered(z)},
                                            std::pair{young.reached(z), old.reached(z)}}) {
            if (!came || !stood || *came <= *stood) continue;
            take_worse(worst, {e, bay, *came, *stood, trade::sets_at(sets, *stood)});
          }
        }
      }
    }
    if (worst) all.push_back(*worst);
  }
  return all;
}

namespace {

// Less of a step between two bays as they rise is none.
constexpr Length kStep = millimetres(10);

// What stands from one height to another in a bay: when it came and sets, of it what sets first.
std::optional<std::pair<Seconds, Seconds>> sets_first(const trade::TopCurve& top, Length low,
                                                      Length high,
                                                      const std::vector<trade::SetStep>& sets) {
  const auto from = top.covered(low);
  const auto to = top.reached(high);
  if (high <= low + kStep || !from || !to) return std::nullopt;
  std::pair first{*from, trade::sets_at(sets, *from)};
  for (const trade::SetStep& step : sets) {
    if (step.from <= *from || step.from > *to) continue;
    if (step.sets(step.from) < first.second) first = {step.from, step.sets(step.from)};
  }
  return first;
}

// The lift whose concrete stands just above a height in a bay; none: it was there before any.
const LiftState* lift_above(const ElementState& there, std::size_t bay, Length z) {
  for (const LiftState& lift : there.lifts) {
    if (lift.bottom[bay] <= z && z < lift.top[bay]) return &lift;
  }
  return nullptr;
}

Length highest(const ElementState& there) {
  Length most;
  for (const trade::TopCurve& top : there.tops) most = std::max(most, top.standing());
  return most;
}

}  // namespace

std::vector<OpenSide> open_sides(const Look& look, std::size_t element) {
  std::vector<OpenSide> sides;
  const ElementState& there = look.state.elements[element];
  if (look.state.closed || there.lifts.empty()) return sides;
  const auto& steps = look.faces[element].sets;
  const auto add = [&](std::size_t bay, Length low, Length high, OpenSide side, std::size_t left) {
    const auto first = sets_first(there.tops[bay], low, high, steps);
    const LiftState* lift = lift_above(there, bay, low);
    if (!first || lift == nullptr) return;
    if (joint_decided(look.state, element, lift->lift, left)) return;
    side.lift = lift->lift;
    side.bay = bay;
    side.ref = lift->ref;
    std::tie(side.came, side.sets) = *first;
    sides.push_back(side);
  };
  const LiftState& placed = there.lifts.back();
  for (std::size_t bay = 0; placed.bay_wise && bay < there.tops.size(); ++bay) {
    for (const std::size_t beside : {bay - 1, bay + 1}) {  // none is too great
      if (beside >= there.tops.size() || placed.bay_ended[beside]) continue;
      const Length low = std::max(placed.bottom[bay], there.tops[beside].standing());
      add(bay, low, there.tops[bay].standing(), {.beside = beside}, std::min(bay, beside));
    }
  }
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    const Element& other = look.plan().elements[e];
    if (e == element || !meet(look.plan().elements[element], other)) continue;
    const Length stands = highest(look.state.elements[e]);
    const Length full = other.lifts.empty() ? other.rise_height() : other.lifts.back();
    for (std::size_t bay = 0; bay < there.tops.size(); ++bay) {
      add(bay, stands, std::min(full, there.tops[bay].standing()), {.other = e}, bay);
    }
  }
  return sides;
}

}  // namespace rb
