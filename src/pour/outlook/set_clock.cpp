#include "pour/outlook/set_clock.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "pour/outlook/measured_set.h"
#include "trade/concrete/setting.h"

namespace rb {

namespace {

constexpr Seconds kBefore{-1e12};
constexpr Seconds kUnended{std::numeric_limits<double>::infinity()};

// The set times that readings gave, mix by mix; asked once.
class MeasuredSets {
 public:
  explicit MeasuredSets(const PourState& state) {
    if (state.penetrations.empty()) return;
    for (const Mix& mix : state.plan->mixes) sets_.push_back(measured_set(state, mix));
    first_ = state.plan->mixes.data();
  }
  [[nodiscard]] const MeasuredSet* of(const Mix& mix) const {
    if (sets_.empty()) return nullptr;
    const auto& set = sets_[static_cast<std::size_t>(&mix - first_)];
    return set ? &*set : nullptr;
  }

 private:
  const Mix* first_ = nullptr;
  std::vector<std::optional<MeasuredSet>> sets_;
};

// A load on its way into an element: all that comes from one moment to another is of it.
struct Load {
  Seconds from{}, to{};
  std::optional<Seconds> batched;  // none: its truck was not entered
  const Mix* mix = nullptr;
  TicketId ticket;
};

class Clock {
 public:
  Clock(const PourState& state, std::size_t element, SetSide side)
      : state_(state), side_(side), measured_(state), loads_(loads_of(state, element)) {}

  std::vector<trade::SetStep> steps() {
    const std::vector<Seconds> changes = moments();
    std::vector<trade::SetStep> steps;
    for (std::size_t i = 0; i < changes.size(); ++i) {
      const trade::SetStep step = at(changes[i]);
      if (steps.empty() || steps.back().at != step.at || steps.back().to_set != step.to_set) {
        steps.push_back(step);
      }
    }
    return steps;
  }

 private:
  [[nodiscard]] bool early() const { return side_ == SetSide::early; }
  [[nodiscard]] Seconds oldest() const { return state_.plan->limits.load_age_max.value; }

  static std::vector<Load> loads_of(const PourState& state, std::size_t element) {
    std::vector<Load> loads;
    std::vector<std::size_t> unended;
    const auto& mixes = state.plan->mixes;
    for (const TruckState& truck : state.trucks) {
      if (!truck.discharged || truck.element.value_or(element) != element) continue;
      Load load{
          *truck.discharged, truck.ended.value_or(kUnended), {}, &mixes.front(), truck.ticket};
      if (truck.what) {
        load.batched = state.told(*truck.ref, truck.what->batched);
        if (const Mix* mix = state.plan->find(truck.what->mix)) load.mix = mix;
      }
      loads.push_back(std::move(load));
    }
    std::stable_sort(loads.begin(), loads.end(),
                     [](const Load& a, const Load& b) { return a.from < b.from; });
    // One whose end nobody told goes to the next, but grows no older than a load may.
    const Seconds oldest = state.plan->limits.load_age_max.value;
    for (std::size_t i = 0; i < loads.size(); ++i) {
      Load& load = loads[i];
      if (load.to != kUnended) continue;
      load.to = std::max(load.from, load.batched.value_or(load.from) + oldest);
      if (i + 1 < loads.size()) load.to = std::min(load.to, loads[i + 1].from);
    }
    return loads;
  }

  // How old a load that has ended is taken at most: as it was then, or as old as one may be.
  [[nodiscard]] Seconds bound(const Load& load) const {
    return std::max(oldest(), load.to - *load.batched);
  }

  // Moments at which the answer may change.
  [[nodiscard]] std::vector<Seconds> moments() const {
    std::vector<Seconds> all{kBefore};
    for (const Load& load : loads_) {
      all.push_back(load.from);
      // What comes at its very end is still of it.
      all.push_back(Seconds{std::nextafter(load.to.count(), 1e300)});
      if (!load.batched) continue;
      all.push_back(*load.batched);
      all.push_back(Seconds{std::nextafter((*load.batched + bound(load)).count(), 1e300)});
    }
    for (const TestState& test : state_.tests) {
      if (test.what.temp) all.push_back(test.at);
    }
    for (const auto& [at, temp] : state_.air) all.push_back(at);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
  }

  // The step that holds from a moment to the next.
  [[nodiscard]] trade::SetStep at(Seconds moment) const {
    std::optional<trade::SetStep> found;
    const Load* before = nullptr;
    for (const Load& load : loads_) {
      if (load.from > moment) break;
      if (load.to >= moment) {
        const trade::SetStep step = of(load, moment, moment);
        const bool first = !found || step.sets(moment) < found->sets(moment);
        if (!found || first == early()) found = step;
      } else if (before == nullptr || load.to >= before->to) {
        before = &load;
      }
    }
    if (found) return *found;
    if (before != nullptr) return of(*before, before->to, moment);
    if (!loads_.empty() && loads_.front().batched && *loads_.front().batched <= moment) {
      return of(loads_.front(), moment, moment);
    }
    return unknown(mix_before(moment), nullptr, moment);
  }

  // Of a load whose concrete came by `out` at the latest.
  [[nodiscard]] trade::SetStep of(const Load& load, Seconds out, Seconds moment) const {
    if (!load.batched) return unknown(*load.mix, &load, moment);
    const Seconds takes = set_of(*load.mix, &load, moment);
    const bool older = moment > out && moment - *load.batched > bound(load);
    if (!older) return {moment, {}, *load.batched + takes};
    const Seconds age = early() ? bound(load) : Seconds{};
    return {moment, std::max(Seconds{}, takes - age)};
  }

  [[nodiscard]] trade::SetStep unknown(const Mix& mix, const Load* load, Seconds moment) const {
    const Seconds age = early() ? oldest() : Seconds{};
    return {moment, std::max(Seconds{}, set_of(mix, load, moment) - age)};
  }

  [[nodiscard]] const Mix& mix_before(Seconds moment) const {
    const Mix* mix = loads_.empty() ? &state_.plan->mixes.front() : loads_.front().mix;
    for (const Load& load : loads_) {
      if (load.from <= moment) mix = load.mix;
    }
    return *mix;
  }

  // From water meeting cement.
  [[nodiscard]] Seconds set_of(const Mix& mix, const Load* load, Seconds moment) const {
    const Celsius temp = temperature(mix, load, moment);
    const MeasuredSet* found = measured_.of(mix);
    if (found == nullptr) return planned_set(mix, temp, side_);
    return (early() ? found->early : found->late) / set_rate(mix, temp, side_);
  }

  [[nodiscard]] Celsius temperature(const Mix& mix, const Load* load, Seconds moment) const {
    std::optional<Celsius> own, latest;
    for (const TestState& test : state_.tests) {
      if (!test.what.temp || after_close(test.at)) continue;
      if (load != nullptr && test.what.ticket == load->ticket) {
        const auto more = early() ? std::max(own.value_or(*test.what.temp), *test.what.temp)
                                  : std::min(own.value_or(*test.what.temp), *test.what.temp);
        own = more;
      }
      if (test.at <= moment && mix_tested(test) == &mix) latest = test.what.temp;
    }
    if (own) return *own;
    if (latest) return *latest;
    if (!early()) return mix.temp_low.value_or(state_.plan->limits.temp_min.value);
    if (mix.temp_high) return *mix.temp_high;
    std::optional<Celsius> air;
    for (const auto& [at, temp] : state_.air) {
      if (at <= moment) air = temp;
    }
    return std::max(mix.set_reference, air.value_or(mix.set_reference));
  }

  // Nothing said after the close changes a figure.
  [[nodiscard]] bool after_close(Seconds at) const {
    return state_.closed && at > state_.clock(*state_.closed);
  }

  // Of a load that nobody entered it is the only one of the plan, if there is one alone.
  [[nodiscard]] const Mix* mix_tested(const TestState& test) const {
    const auto& mixes = state_.plan->mixes;
    return mixes.size() == 1 ? &mixes.front() : mix_of(state_, test.what.ticket);
  }

  const PourState& state_;
  SetSide side_;
  MeasuredSets measured_;
  std::vector<Load> loads_;
};

}  // namespace

double set_rate(const Mix& mix, Celsius temp, SetSide side) {
  const auto by = [&](trade::ActivationTemperature q) {
    return trade::rate_factor(temp, {mix.set_reference, q});
  };
  if (mix.set_q) return by(*mix.set_q);
  return side == SetSide::early ? std::max(by(trade::kQuickSet), by(trade::kSlowSet))
                                : std::min(by(trade::kQuickSet), by(trade::kSlowSet));
}

Seconds planned_set(const Mix& mix, Celsius temp, SetSide side) {
  return mix.initial_set / set_rate(mix, temp, side);
}

std::vector<trade::SetStep> set_steps(const PourState& state, std::size_t element, SetSide side) {
  return Clock{state, element, side}.steps();
}

bool set_measured(const PourState& state, std::size_t element, Seconds came) {
  return MeasuredSets{state}.of(mix_at(state, element, came)) != nullptr;
}

const Mix& mix_at(const PourState& state, std::size_t element, Seconds at) {
  const Mix* mix = &state.plan->mixes.front();
  if (state.plan->mixes.size() == 1) return *mix;
  Seconds latest{};
  bool found = false;
  for (const TruckState& truck : state.trucks) {
    if (!truck.what || !truck.discharged || *truck.discharged > at) continue;
    if (truck.element && *truck.element != element) continue;
    if (found && *truck.discharged < latest) continue;
    if (const Mix* used = state.plan->find(truck.what->mix)) {
      mix = used;
      latest = *truck.discharged;
      found = true;
    }
  }
  return *mix;
}

}  // namespace rb
