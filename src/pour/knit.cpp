#include "pour/knit.h"

#include <algorithm>

#include "pour/form.h"

namespace rb {

namespace {

struct Reached {
  Length from, to;  // along x
  Seconds when;
};

std::optional<Seconds> first_shake(const std::vector<trade::Interval>& spans, Seconds since) {
  for (const trade::Interval& span : spans) {
    if (span.to > since) return std::max(span.from, since);
  }
  return std::nullopt;
}

// Where and when motors that reach a height first ran since a moment.
std::vector<Reached> worked_by_rows(const trade::Face& face, Length z, Seconds since) {
  std::vector<Reached> worked;
  for (const auto& side : face.sides) {
    for (const trade::Shaker& shaker : side) {
      if (!shaker.reaches_z(z)) continue;
      if (const auto when = first_shake(shaker.running, since)) {
        worked.push_back({shaker.x - shaker.reach_x, shaker.x + shaker.reach_x, *when});
      }
    }
  }
  return worked;
}

std::optional<Seconds> first_insert(const PourState& state, std::size_t element, std::size_t bay,
                                    Seconds since) {
  for (const InsertState& insert : state.inserts) {  // in order of time
    if (insert.element != element || insert.at < since) continue;
    if (insert.bay && *insert.bay != bay) continue;
    if (insert.what.depth_below >= state.plan->limits.knit_depth.value) return insert.at;
  }
  return std::nullopt;
}

bool in_opening(const Element& element, Length x, Length z) {
  return std::any_of(element.openings.begin(), element.openings.end(), [&](const Patch& p) {
    return trade::holds_x(p, x) && z >= p.z && z <= p.z + p.h;
  });
}

// Places along a bay between which nothing changes: edges of reaches and of openings.
std::vector<Length> cuts(const Element& element, Length from, Length to,
                         const std::vector<Reached>& worked) {
  std::vector<Length> edges{from, to};
  const auto cut = [&](Length x) {
    if (x > from && x < to) edges.push_back(x);
  };
  for (const Reached& reach : worked) {
    cut(reach.from);
    cut(reach.to);
  }
  for (const Patch& opening : element.openings) {
    cut(opening.x);
    cut(opening.x + opening.w);
  }
  std::sort(edges.begin(), edges.end());
  return edges;
}

// When the last spot of a joint was worked, or nothing while one has not been.
std::optional<Seconds> knitted_at(const PourState& state, std::size_t element, std::size_t bay,
                                  const trade::Face& face, Length z, Seconds covered) {
  const Element& planned = state.plan->elements[element];
  const auto worked = worked_by_rows(face, z, covered);
  const auto insert = first_insert(state, element, bay, covered);
  const Length start = planned.bay_start(bay);
  const auto edges = cuts(planned, start, start + planned.bays[bay], worked);
  Seconds last = covered;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    if (edges[i + 1] - edges[i] <= trade::kSamePlace) continue;
    const Length x = (edges[i] + edges[i + 1]) / 2.0;
    if (in_opening(planned, x, z)) continue;
    std::optional<Seconds> first = insert;
    for (const Reached& reach : worked) {
      if (x >= reach.from && x <= reach.to && (!first || reach.when < *first)) first = reach.when;
    }
    if (!first) return std::nullopt;
    last = std::max(last, *first);
  }
  return last;
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
        clock.below->knitted =
            knitted_at(state, element, bay, face, clock.below->z, *clock.below->covered);
      }
    }
    clocks.push_back(std::move(clock));
  }
  return clocks;
}

}  // namespace rb
