#include "pour/outlook/knit.h"

#include <algorithm>
#include <cmath>

#include "pour/outlook/insertions.h"
#include "pour/outlook/row_shaking.h"

namespace rb {

namespace {

// Motors that reach a joint, by where along the element, and when they first ran over it.
struct Reached {
  Length from, to;
  Seconds when;
};

std::vector<Reached> worked_by_rows(const trade::Face& face, Length start, Length end, Length z,
                                    Seconds covered) {
  std::vector<Reached> worked;
  const trade::Running* last = nullptr;  // motors of a row share one: asked once
  std::optional<Seconds> when;
  for (const auto& side : face.sides) {
    for (const trade::Shaker& shaker : side) {
      const Length from = shaker.x - shaker.reach_x - trade::kSamePlace;
      const Length to = shaker.x + shaker.reach_x + trade::kSamePlace;
      if (to < start || from > end || shaker.running.empty() || !shaker.reaches_z(z)) continue;
      if (last == nullptr || !last->shares(shaker.running)) {
        last = &shaker.running;
        when = last->first_from(covered);
      }
      if (when) worked.push_back({from, to, *when});
    }
  }
  return worked;
}

bool in_opening(const trade::Face& face, Length x, Length z) {
  return std::any_of(face.openings.begin(), face.openings.end(), [&](const Patch& p) {
    return trade::holds_x(p, x) && z >= p.z && z <= p.z + p.h;
  });
}

// When concrete of an element sets, asked again and again.
class Sets {
 public:
  Sets(const PourState& state, std::size_t element) : steps_(set_steps(state, element)) {}

  [[nodiscard]] Seconds at(Seconds came) const { return trade::sets_at(steps_, came); }
  // The earliest that concrete which came from one moment to another sets. The time to set changes
  // in steps; within a step the first to come is the first to set.
  [[nodiscard]] Seconds first(Seconds from, Seconds to) const {
    Seconds first = std::min(at(from), at(to));
    for (const trade::SetStep& step : steps_) {
      if (step.from > from && step.from <= to) first = std::min(first, step.sets(step.from));
    }
    return first;
  }

 private:
  std::vector<trade::SetStep> steps_;
};

std::optional<Joint> joint_at(const PourState& state, const Sets& sets, const trade::TopCurve& top,
                              int lift, Length z) {
  const auto came = top.reached(z);
  if (!came || z <= Length{}) return std::nullopt;
  Joint joint;
  joint.lift = lift;
  joint.z = z;
  joint.came = *came;
  joint.sets = sets.at(*came);
  const Length under = std::max(Length{}, z - state.plan->limits.knit_depth.value);
  const Seconds first = under > Length{} ? *top.reached(under) : *top.covered(under);
  joint.early = sets.first(std::min(first, *came), *came);
  return joint;
}

// Of an element's face, what its joints depend on: the rows that reach one, and when they ran since
// the first of them was covered.
trade::Face face_at(const PourState& state, std::size_t element,
                    const std::vector<KnitClock>& clocks, Seconds until) {
  const Element& planned = state.plan->elements[element];
  trade::Face face{planned.bays, {}, planned.openings, {}, false, {}};
  std::optional<Seconds> covered;
  for (const KnitClock& clock : clocks) {
    if (!clock.below || !clock.below->covered) continue;
    covered = std::min(covered.value_or(*clock.below->covered), *clock.below->covered);
  }
  if (!covered) return face;
  std::vector<trade::Shaker>& shakers = face.sides.emplace_back();
  for (std::size_t r = 0; r < planned.rows.size(); ++r) {
    const Row& row = planned.rows[r];
    std::optional<RowShaking> shaken;
    for (std::size_t i = 0; i < row.motors.size(); ++i) {
      trade::Shaker shaker = shaker_at(planned, row, row.motors[i]);
      const bool reaches = std::any_of(clocks.begin(), clocks.end(), [&](const KnitClock& clock) {
        return clock.below && shaker.reaches_z(clock.below->z);
      });
      if (!reaches) continue;
      if (!shaken) shaken = shaking_since(state, element, r, *covered, until, Unended::runs_on);
      shaker.running = (*shaken)[i];
      shakers.push_back(std::move(shaker));
    }
  }
  return face;
}

Length full_height(const Element& element) {
  return element.lifts.empty() ? element.rise_height() : element.lifts.back();
}

}  // namespace

std::optional<Seconds> first_deep_insert(const PourState& state, std::size_t element,
                                         std::size_t bay, Length z, Seconds since) {
  const auto& all = state.inserts;  // in order of time
  std::optional<std::vector<trade::SetStep>> sets;
  auto insert = std::lower_bound(all.begin(), all.end(), since,
                                 [](const InsertState& i, Seconds m) { return i.at < m; });
  for (; insert != all.end(); ++insert) {
    if (insert->element != element || (insert->bay && *insert->bay != bay)) continue;
    if (insert->what.depth_below < state.plan->limits.knit_depth.value) continue;
    if (!sets) sets = set_steps(state, element);
    const auto worked = worked_by(state, *insert, bay, *sets);
    if (worked && worked->from <= z + trade::kSamePlace) return insert->at;
  }
  return std::nullopt;
}

Knitting knitting(const trade::Face& face, std::size_t bay, Length z, Seconds covered,
                  std::optional<Seconds> insert) {
  Length start;
  for (std::size_t b = 0; b < bay; ++b) start += face.bays[b];
  const Length end = start + face.bays[bay];
  Length whole = end;
  for (std::size_t b = bay + 1; b < face.bays.size(); ++b) whole += face.bays[b];
  const auto worked = worked_by_rows(face, start, end, z, covered);
  const auto first = static_cast<std::size_t>(std::max(0.0, start / trade::kDoseCell - 1));
  const auto past = static_cast<std::size_t>(std::ceil(end / trade::kDoseCell - 1e-6));
  Knitting knit{false, covered};
  for (std::size_t i = first; i < past; ++i) {
    // The middle of what the element has of the cell: the last one may stand over its end.
    const Length left = trade::kDoseCell * static_cast<double>(i);
    const Length x = (left + std::min(left + trade::kDoseCell, whole)) / 2.0;
    if (face.bay_at(x) != bay || in_opening(face, x, z)) continue;
    knit.spots = true;
    std::optional<Seconds> when = insert;
    for (const Reached& row : worked) {
      if (x >= row.from && x <= row.to && (!when || row.when < *when)) when = row.when;
    }
    if (!when) return {true, std::nullopt};
    knit.when = std::max(*knit.when, *when);
  }
  return knit;
}

bool joint_decided(const PourState& state, std::size_t element, int lift, std::size_t bay) {
  return std::any_of(state.joints.begin(), state.joints.end(), [&](const JointState& joint) {
    return joint.element == element && (!joint.what.lift || *joint.what.lift == lift) &&
           (!joint.bay || *joint.bay == bay);
  });
}

std::vector<KnitClock> knit_clocks(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const ElementState& there = state.elements[element];
  const Sets sets{state, element};
  std::vector<KnitClock> clocks;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    KnitClock clock;
    clock.bay = bay;
    const trade::TopCurve& top = there.tops[bay];
    // The lift that brought the surface, and the top of the one under it.
    const LiftState* above = nullptr;
    const LiftState* under = nullptr;
    for (auto lift = there.lifts.rbegin(); lift != there.lifts.rend() && !under; ++lift) {
      if (lift->top[bay] > lift->bottom[bay]) (above == nullptr ? above : under) = &*lift;
    }
    const Length standing = top.at(at);
    clock.surface = joint_at(state, sets, top, above == nullptr ? 0 : above->lift, standing);
    if (clock.surface) {
      clock.surface->last =
          planned.one_layer() || standing >= full_height(planned) - millimetres(10);
    }
    if (under != nullptr) {
      clock.below = joint_at(state, sets, top, under->lift, under->top[bay]);
      if (clock.below) clock.below->covered = top.covered(clock.below->z);
    }
    clocks.push_back(std::move(clock));
  }
  const trade::Face face = face_at(state, element, clocks, at);
  for (KnitClock& clock : clocks) {
    if (!clock.below || !clock.below->covered) continue;
    const Seconds covered = *clock.below->covered;
    clock.below->knitted =
        knitting(face, clock.bay, clock.below->z, covered,
                 first_deep_insert(state, element, clock.bay, clock.below->z, covered))
            .when;
  }
  return clocks;
}

}  // namespace rb
