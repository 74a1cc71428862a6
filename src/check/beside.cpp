#include "check/beside.h"

#include <algorithm>

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

}  // namespace rb
