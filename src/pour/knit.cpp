#include "pour/knit.h"

#include <algorithm>
#include <cmath>

#include "pour/form.h"

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

// The earliest that concrete which came from one moment to another sets. The time to set changes in
// steps; within a step the first to come is the first to set.
Seconds first_to_set(const PourState& state, std::size_t element, Seconds from, Seconds to) {
  Seconds first = std::min(sets_at(state, element, from), sets_at(state, element, to));
  for (const trade::SetStep& step : set_steps(state, element)) {
    if (step.from > from && step.from <= to) first = std::min(first, step.from + step.to_set);
  }
  return first;
}

std::optional<Joint> joint_at(const PourState& state, std::size_t element,
                              const trade::TopCurve& top, int lift, Length z) {
  const auto came = top.reached(z);
  if (!came || z <= Length{}) return std::nullopt;
  Joint joint;
  joint.lift = lift;
  joint.z = z;
  joint.came = *came;
  joint.sets = sets_at(state, element, *came);
  const Length under = std::max(Length{}, z - state.plan->limits.knit_depth.value);
  const Seconds first = under > Length{} ? *top.reached(under) : *top.covered(under);
  joint.early = first_to_set(state, element, std::min(first, *came), *came);
  return joint;
}

Length full_height(const Element& element) {
  return element.lifts.empty() ? element.rise_height() : element.lifts.back();
}

}  // namespace

std::optional<Seconds> first_deep_insert(const PourState& state, std::size_t element,
                                         std::size_t bay, Seconds since) {
  for (const InsertState& insert : state.inserts) {  // in order of time
    if (insert.element != element || insert.at < since) continue;
    if (insert.bay && *insert.bay != bay) continue;
    if (insert.what.depth_below >= state.plan->limits.knit_depth.value) return insert.at;
  }
  return std::nullopt;
}

Knitting knitting(const trade::Face& face, std::size_t bay, Length z, Seconds covered,
                  std::optional<Seconds> insert) {
  Length start;
  for (std::size_t b = 0; b < bay; ++b) start += face.bays[b];
  const Length end = start + face.bays[bay];
  const auto worked = worked_by_rows(face, start, end, z, covered);
  const auto first = static_cast<std::size_t>(std::max(0.0, start / trade::kDoseCell - 1));
  const auto past = static_cast<std::size_t>(std::ceil(end / trade::kDoseCell - 1e-6));
  Knitting knit{false, covered};
  for (std::size_t i = first; i < past; ++i) {
    const Length x = trade::kDoseCell * (static_cast<double>(i) + 0.5);
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

std::vector<KnitClock> knit_clocks(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const ElementState& there = state.elements[element];
  const trade::Face face = face_of(state, element, judged_sides(planned), at);
  std::vector<KnitClock> clocks;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    KnitClock clock;
    clock.bay = bay;
    const trade::TopCurve& top = there.tops[bay];
    // The lift that brought the surface, and the top of the one under it.
    const LiftState* above = nullptr;
    const LiftState* under = nullptr;
    for (const LiftState& lift : there.lifts) {
      if (lift.top[bay] <= lift.bottom[bay]) continue;
      under = above;
      above = &lift;
    }
    const Length standing = top.at(at);
    clock.surface = joint_at(state, element, top, above == nullptr ? 0 : above->lift, standing);
    if (clock.surface) {
      clock.surface->last =
          planned.kind == ElementKind::deck || standing >= full_height(planned) - millimetres(10);
    }
    if (under != nullptr && planned.kind != ElementKind::deck) {
      clock.below = joint_at(state, element, top, under->lift, under->top[bay]);
      if (clock.below) clock.below->covered = top.covered(clock.below->z);
      if (clock.below && clock.below->covered) {
        const Seconds covered = *clock.below->covered;
        clock.below->knitted = knitting(face, bay, clock.below->z, covered,
                                        first_deep_insert(state, element, bay, covered))
                                   .when;
      }
    }
    clocks.push_back(std::move(clock));
  }
  return clocks;
}

}  // namespace rb
