#include "pour/outlook/set_clock.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <deque>
#include <memory>
#include <optional>
#include <string_view>
#include <unordered_map>

#include "pour/log/as_it_was.h"
#include "pour/outlook/loads.h"
#include "pour/outlook/measured_set.h"
#include "trade/concrete/setting.h"

namespace rb {

namespace {

constexpr Seconds kBefore{-1e12};

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
  std::optional<Celsius> tested{};  // by its own tests, the side's end of them
  std::size_t last_out = 0;         // of it and those before, the one that ended last
};

class Clock {
 public:
  Clock(const PourState& state, std::size_t element, SetSide side)
      : state_(state), side_(side), measured_(state), loads_(loads_of(state, element)) {
    take_tests();
    for (std::size_t i = 1; i < loads_.size(); ++i) {
      const std::size_t before = loads_[i - 1].last_out;
      loads_[i].last_out = loads_[i].to >= loads_[before].to ? i : before;
    }
  }

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
  [[nodiscard]] bool early() const { return side_ != SetSide::late; }
  [[nodiscard]] Seconds oldest() const { return state_.plan->limits.load_age_max.value; }

  static std::vector<Load> loads_of(const PourState& state, std::size_t element) {
    std::vector<Load> loads;
    const auto& mixes = state.plan->mixes;
    for (const LoadSpan& span : load_spans(state, element)) {
      const TruckState& truck = state.trucks[span.truck];
      Load load{span.from, span.to, {}, &mixes.front(), truck.ticket};
      if (truck.what) {
        load.batched = state.told(*truck.ref, truck.what->batched);
        if (const Mix* mix = state.plan->find(truck.what->mix)) load.mix = mix;
      }
      loads.push_back(std::move(load));
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
    const std::size_t begun = begun_by(moment);
    // Back to where all before had ended.
    for (std::size_t i = begun; i-- > 0 && loads_[loads_[i].last_out].to >= moment;) {
      if (loads_[i].to < moment) continue;
      const trade::SetStep step = of(loads_[i], moment, moment);
      const bool first = !found || step.sets(moment) < found->sets(moment);
      if (!found || first == early()) found = step;
    }
    if (found) return *found;
    if (begun > 0) {
      const Load& before = loads_[loads_[begun - 1].last_out];
      return of(before, before.to, moment);
    }
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
    if (loads_.empty()) return state_.plan->mixes.front();
    return *loads_[std::max<std::size_t>(1, begun_by(moment)) - 1].mix;
  }

  // From water meeting cement.
  [[nodiscard]] Seconds set_of(const Mix& mix, const Load* load, Seconds moment) const {
    const Celsius temp = temperature(mix, load, moment);
    const MeasuredSet* found = measured_.of(mix);
    const Seconds set = found == nullptr
                            ? planned_set(mix, temp, side_)
                            : (early() ? found->early : found->late) / set_rate(mix, temp, side_);
    return side_ == SetSide::early ? set * state_.plan->limits.plastic_share.value : set;
  }

  [[nodiscard]] Celsius temperature(const Mix& mix, const Load* load, Seconds moment) const {
    if (load != nullptr && load->tested) return *load->tested;
    const auto& tests = tests_[static_cast<std::size_t>(&mix - state_.plan->mixes.data())];
    if (const auto* latest = last_by(tests, moment)) return *latest;
    if (!early()) return mix.temp_low.value_or(state_.plan->limits.temp_min.value);
    if (mix.temp_high) return *mix.temp_high;
    const auto* air = last_by(state_.air, moment);
    return air == nullptr ? mix.set_reference : std::max(mix.set_reference, *air);
  }

  using Temperatures = std::vector<std::pair<Seconds, Celsius>>;  // in order of time

  static const Celsius* last_by(const Temperatures& all, Seconds moment) {
    const auto later =
        std::upper_bound(all.begin(), all.end(), moment,
                         [](Seconds m, const auto& reading) { return m < reading.first; });
    return later == all.begin() ? nullptr : &(later - 1)->second;
  }

  // How many loads had begun by then.
  [[nodiscard]] std::size_t begun_by(Seconds moment) const {
    const auto later = std::upper_bound(loads_.begin(), loads_.end(), moment,
                                        [](Seconds m, const Load& l) { return m < l.from; });
    return static_cast<std::size_t>(later - loads_.begin());
  }

  void take_tests() {
    std::unordered_map<std::string_view, std::size_t> by_ticket;
    for (std::size_t i = 0; i < loads_.size(); ++i) by_ticket.emplace(loads_[i].ticket.text, i);
    tests_.resize(state_.plan->mixes.size());
    for (const TestState& test : state_.tests) {
      if (!test.what.temp || after_close(test.at)) continue;
      const Celsius temp = *test.what.temp;
      if (const auto load = by_ticket.find(test.what.ticket.text); load != by_ticket.end()) {
        auto& own = loads_[load->second].tested;
        own = early() ? std::max(own.value_or(temp), temp) : std::min(own.value_or(temp), temp);
      }
      if (const Mix* mix = mix_tested(test)) {
        tests_[static_cast<std::size_t>(mix - state_.plan->mixes.data())].emplace_back(test.at,
                                                                                       temp);
      }
    }
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
  std::vector<Temperatures> tests_;  // by mix
};

// What was worked out last stands as long as no load, no test and no temperature came, went or
// changed: asked at every tap and every frame.
struct KnownSteps {
  std::shared_ptr<const Plan> plan;  // held, so that no other comes to its address
  std::size_t element = 0;
  SetSide side = SetSide::early;
  std::uint64_t stamp = 0;
  std::array<std::size_t, 5> sizes{};
  std::optional<Moment> closed;
  std::vector<trade::SetStep> steps;
};

std::array<std::size_t, 5> sizes_of(const PourState& state) {
  return {state.trucks.size(), state.tests.size(), state.penetrations.size(), state.air.size(),
          state.corrections.size()};
}

bool stands(const KnownSteps& known, const PourState& state) {
  if (known.closed != state.closed || known.sizes != sizes_of(state)) return false;
  const AsItWas since{state, known.stamp};
  return since.known() && since.same(Trace::Of::truck) && since.same(Trace::Of::test) &&
         since.same(Trace::Of::penetration) && since.same(Trace::Of::air);
}

}  // namespace

double set_rate(const Mix& mix, Celsius temp, SetSide side) {
  const auto by = [&](trade::ActivationTemperature q) {
    return trade::rate_factor(temp, {mix.set_reference, q});
  };
  if (mix.set_q) return by(*mix.set_q);
  return side != SetSide::late ? std::max(by(trade::kQuickSet), by(trade::kSlowSet))
                               : std::min(by(trade::kQuickSet), by(trade::kSlowSet));
}

Seconds planned_set(const Mix& mix, Celsius temp, SetSide side) {
  return mix.initial_set / set_rate(mix, temp, side);
}

std::vector<trade::SetStep> set_steps(const PourState& state, std::size_t element, SetSide side) {
  thread_local std::deque<KnownSteps> all;
  constexpr std::size_t kSidesKept = 16;
  auto known = std::find_if(all.begin(), all.end(), [&](const KnownSteps& k) {
    return k.plan.get() == state.plan.get() && k.element == element && k.side == side;
  });
  if (known == all.end()) {
    if (all.size() == kSidesKept) all.pop_front();
    known = all.insert(all.end(), KnownSteps{state.plan, element, side, 0, {}, {}, {}});
  } else if (stands(*known, state)) {
    return known->steps;
  }
  known->steps = Clock{state, element, side}.steps();
  known->stamp = AsItWas::stamp(state);
  known->sizes = sizes_of(state);
  known->closed = state.closed;
  return known->steps;
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
    const Mix* used = truck.what ? state.plan->find(truck.what->mix) : nullptr;
    if (used == nullptr) continue;
    for (const PartState& part : truck.parts) {
      if (part.from > at || !part.may_be_in(element) || (found && part.from < latest)) continue;
      mix = used;
      latest = part.from;
      found = true;
    }
  }
  return *mix;
}

}  // namespace rb
