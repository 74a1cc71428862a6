#include "pour/planner/supply.h"

#include <algorithm>
#include <cmath>

#include "pour/outlook/set_clock.h"

namespace rb {

namespace {

constexpr Volume kOrderStep = cubic_metres(0.1);
constexpr int kSlices = 8;  // of what tapers, between two heights

double steps_in(Volume volume) {
  return std::floor(volume / kOrderStep + kHair);
}

// Loads as even as tenths of a cubic metre allow, the last with what is left over.
void even_out(std::vector<Volume>& loads, std::size_t first) {
  Volume all;
  for (std::size_t i = first; i < loads.size(); ++i) all += loads[i];
  const auto many = static_cast<double>(loads.size() - first);
  const double each = std::floor(steps_in(all) / many);
  double more = steps_in(all) - each * many;
  Volume left = all;
  for (std::size_t i = first; i + 1 < loads.size(); ++i) {
    loads[i] = kOrderStep * (each + (more > 0 ? 1.0 : 0.0));
    more -= 1;
    left -= loads[i];
  }
  loads.back() = left;
}

// When so much is placed: the end of a lift rather than the start of the next.
Seconds placed_by(const PlannedPour& planned, Length height) {
  for (const LiftStep& step : planned.lifts) {
    if (height <= step.top + trade::kSamePlace) {
      const double share = (height - step.bottom) / (step.top - step.bottom);
      return step.begins + step.place * std::clamp(share, 0.0, 1.0);
    }
  }
  return planned.lifts.back().begins + planned.lifts.back().place;
}

// When placing goes on from there: the start of the next lift rather than the end of one.
Seconds placed_from(const PlannedPour& planned, Length height) {
  for (std::size_t i = 1; i < planned.lifts.size(); ++i) {
    const Length off = height - planned.lifts[i].bottom;
    if (off <= trade::kSamePlace && off >= -trade::kSamePlace) return planned.lifts[i].begins;
  }
  return placed_by(planned, height);
}

}  // namespace

VolumeBelow::VolumeBelow(const Element& element) {
  std::vector<Length> heights{Length{}, element.height};
  for (const Length& top : element.lifts) heights.push_back(top);
  for (const Patch& o : element.openings) {
    heights.push_back(o.z);
    heights.push_back(std::min(o.z + o.h, element.height));
  }
  std::sort(heights.begin(), heights.end());
  const int slices = element.taper().even() ? 1 : kSlices;
  Volume sum;
  steps_.emplace_back(Length{}, sum);
  for (std::size_t i = 1; i < heights.size(); ++i) {
    if (heights[i] - heights[i - 1] <= Length{}) continue;
    const Length thick = (heights[i] - heights[i - 1]) / static_cast<double>(slices);
    for (int s = 0; s < slices; ++s) {
      const Length from = heights[i - 1] + thick * static_cast<double>(s);
      for (std::size_t bay = 0; bay < element.bays.size(); ++bay) {
        sum += element.volume(bay, from, from + thick);
      }
      steps_.emplace_back(from + thick, sum);
    }
  }
}

Volume VolumeBelow::at(Length height) const {
  for (std::size_t i = 1; i < steps_.size(); ++i) {
    const auto& [top, all] = steps_[i];
    if (height > top) continue;
    const auto& [bottom, below] = steps_[i - 1];
    return below + (all - below) * double{(height - bottom) / (top - bottom)};
  }
  return steps_.back().second;
}

Length VolumeBelow::height_of(Volume volume) const {
  for (std::size_t i = 1; i < steps_.size(); ++i) {
    const auto& [top, all] = steps_[i];
    const auto& [bottom, below] = steps_[i - 1];
    if (volume > all || all <= below) continue;
    return bottom + (top - bottom) * double{(volume - below) / (all - below)};
  }
  return steps_.back().first;
}

std::optional<std::vector<Volume>> in_loads(Volume concrete, Volume load, LastLoad last) {
  const double wanted = std::ceil(concrete / load - kHair);
  const auto many = static_cast<std::size_t>(std::clamp(wanted, 1.0, 1e6));
  std::vector<Volume> loads(many, load);
  loads.back() = concrete - load * static_cast<double>(many - 1);
  if (many == 1 || loads.back() >= kLeastLoad) return loads;
  if (last == LastLoad::may_be_short) return loads;
  if (load + loads.back() >= kLeastLoad * 2.0) {
    even_out(loads, many - 2);
    return loads;
  }
  if (concrete < kLeastLoad * static_cast<double>(many)) return std::nullopt;
  even_out(loads, 0);
  return loads;
}

Supply supply_for(const PlanWish& wish, const PlannedPour& planned, LastLoad last) {
  Supply supply;
  supply.pace = quantity_of<trade::VolumeRate>(planned.concrete.value() / planned.duration.count());
  const Seconds time = std::max(Seconds{}, wish.limits.load_age_max.value - wish.haul);
  supply.in_time = quantity_of<Volume>(supply.pace.value() * time.count());
  const auto loads =
      in_loads(planned.concrete, wish.load, wish.given.load ? LastLoad::may_be_short : last);
  supply.longest = time;
  if (!loads) return supply;
  const VolumeBelow below{planned.plan.elements.front()};
  Volume sum;
  supply.loads.reserve(loads->size());
  for (const Volume& load : *loads) {
    PlannedLoad made{load, placed_from(planned, below.height_of(sum)), {}};
    sum += load;
    made.ends = placed_by(planned, below.height_of(sum));
    supply.loads.push_back(made);
  }
  supply.parted = true;
  supply.longest = {};
  for (const PlannedLoad& load : supply.loads) {
    supply.longest = std::max(supply.longest, load.ends - load.begins);
  }
  return supply;
}

Seconds workable(const PlanWish& wish) {
  return planned_set(wish.mix, wish.concrete, SetSide::early) * wish.limits.plastic_share.value;
}

}  // namespace rb
