#include "pour/outlook/face_bands.h"

#include <algorithm>

#include "pour/outlook/form.h"
#include "pour/outlook/pressed.h"

namespace rb {

namespace {

constexpr Length kNothing = millimetres(0.01);
constexpr Length kFull = millimetres(10);  // the top of an element is reached within this

// Heights of a bay at which another load may begin.
std::vector<Length> load_edges(const trade::TopCurve& top, const std::vector<LoadSpan>& spans) {
  std::vector<Length> edges{Length{}, top.standing()};
  for (const LoadSpan& span : spans) {
    edges.push_back(top.at(span.from));
    if (in_seconds(span.to) < 1e15) edges.push_back(top.at(span.to));
  }
  std::sort(edges.begin(), edges.end());
  return edges;
}

std::optional<Seconds> oldest(const PourState& state, const std::vector<std::size_t>& trucks,
                              Seconds at) {
  std::optional<Seconds> age;
  for (const std::size_t t : trucks) {
    const TruckState& truck = state.trucks[t];
    if (!truck.what) continue;
    const Seconds old = at - state.told(*truck.ref, truck.what->batched);
    age = std::max(age.value_or(old), old);
  }
  return age;
}

}  // namespace

const LiftState* lift_numbered(const ElementState& element, int number) {
  const auto lift = std::find_if(element.lifts.rbegin(), element.lifts.rend(),
                                 [&](const LiftState& l) { return l.lift == number; });
  return lift == element.lifts.rend() ? nullptr : &*lift;
}

std::vector<LoadBand> load_bands(const PourState& state, std::size_t element) {
  const ElementState& there = state.elements[element];
  const std::vector<LoadSpan> spans = load_spans(state, element);
  std::vector<LoadBand> bands;
  for (std::size_t bay = 0; bay < there.tops.size(); ++bay) {
    const trade::TopCurve& top = there.tops[bay];
    const std::vector<Length> edges = load_edges(top, spans);
    const std::size_t first = bands.size();
    Length from;
    for (const Length& edge : edges) {
      if (edge - from <= kNothing) continue;
      const auto came = top.covered(from);
      const auto until = top.reached(edge);
      const auto middle = top.reached((from + edge) / 2.0);
      if (!came || !until || !middle) continue;
      auto trucks = loads_at(state, spans, *middle);
      const auto age = oldest(state, trucks, *until);
      if (bands.size() > first && bands.back().trucks == trucks) {
        LoadBand& same = bands.back();
        same.to = edge;
        same.until = *until;
        same.age = age;
      } else {
        bands.push_back({bay, from, edge, *came, *until, std::move(trucks), age});
      }
      from = edge;
    }
  }
  return bands;
}

std::vector<CoverBand> cover_bands(const PourState& state, std::size_t element) {
  const Element& planned = state.plan->elements[element];
  const ElementState& there = state.elements[element];
  const auto sets = set_steps(state, element);
  const Length full = planned.lifts.empty() ? planned.rise_height() : planned.lifts.back();
  std::vector<CoverBand> bands;
  for (const LiftState& lift : there.lifts) {
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      if (lift.top[bay] - lift.bottom[bay] <= kNothing) continue;
      const trade::TopCurve& top = there.tops[bay];
      const auto came = top.reached(lift.top[bay]);
      if (!came) continue;
      CoverBand band{bay, lift.lift, lift.bottom[bay], lift.top[bay], *came};
      band.sets = trade::sets_at(sets, *came);
      band.covered = top.covered(lift.top[bay]);
      band.last = planned.one_layer() || lift.top[bay] >= full - kFull;
      bands.push_back(band);
    }
  }
  return bands;
}

std::vector<HeadSpan> head_spans(const PourState& state, std::size_t element, Side side) {
  const Element& planned = state.plan->elements[element];
  const ElementState& there = state.elements[element];
  const auto late = set_steps(state, element, SetSide::late);
  std::vector<HeadSpan> spans;
  for (std::size_t row = 0; row < planned.rows.size(); ++row) {
    if (planned.rows[row].side != side) continue;
    const std::vector<BayReached> bays = bays_reached(planned, planned.rows[row]);
    for (const std::size_t index : there.rows[row].runs) {
      const RunState& run = state.runs[index];
      const Seconds to = counts_until(state, run, state.last, Unended::whole);
      if (to < run.from) continue;
      const UnitWeight weight = heaviest(state, to);
      const std::vector<Length> set = set_floors(there, late, run.from);
      for (const BayReached& bay : bays) {
        const Length floor = std::max(bay.pressed, set[bay.bay]);
        if (there.tops[bay.bay].at(to) <= floor) continue;
        spans.push_back({bay.bay, floor, run.from, to, weight, index});
      }
    }
  }
  std::stable_sort(spans.begin(), spans.end(),
                   [](const HeadSpan& a, const HeadSpan& b) { return a.floor < b.floor; });
  return spans;
}

namespace {

// The greatest so far, from the lowest floor of a bay up.
struct Pressing {
  Length from, top;
  UnitWeight weight{};
  std::size_t run = 0;
  bool any = false;
};

void end_band(std::vector<HeadBand>& bands, std::size_t bay, const Pressing& now, Length to) {
  to = std::min(to, now.top);
  if (!now.any || to - now.from <= kNothing) return;
  bands.push_back(
      {bay, now.from, to, now.weight * (now.top - now.from), now.weight * (now.top - to), now.run});
}

}  // namespace

std::vector<HeadBand> heads_until(const ElementState& element, const std::vector<HeadSpan>& spans,
                                  Seconds at) {
  std::vector<HeadBand> bands;
  std::vector<Pressing> bays(element.tops.size());
  for (const HeadSpan& span : spans) {
    if (span.from >= at) continue;
    const Length top = element.tops[span.bay].at(std::min(at, span.to));
    Pressing& now = bays[span.bay];
    // Of one weight the higher top presses more at every height; concrete tested heavier later on
    // weighs more from the floor up.
    const bool more =
        span.weight * (top - span.floor) > now.weight * std::max(Length{}, now.top - span.floor);
    if (top <= span.floor || (now.any && !more)) continue;
    end_band(bands, span.bay, now, span.floor);
    now = {span.floor, top, span.weight, span.run, true};
  }
  for (std::size_t bay = 0; bay < bays.size(); ++bay) {
    end_band(bands, bay, bays[bay], bays[bay].top);
  }
  return bands;
}

}  // namespace rb
