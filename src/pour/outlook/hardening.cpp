#include "pour/outlook/hardening.h"

#include <algorithm>

#include "pour/outlook/loads.h"
#include "pour/outlook/set_clock.h"
#include "trade/concrete/strength.h"

namespace rb {

namespace {

using trade::TemperatureHistory;
using trade::TemperatureReading;

bool same_place(const event::ConcreteTemp& a, const event::ConcreteTemp& b) {
  return a.z == b.z && a.x == b.x;
}

// The readings of one place from a moment on, on a clock that starts at `from`, which is put to the
// first reading where none lies before.
TemperatureHistory history_of(const std::vector<TemperatureReading>& readings, Seconds& from) {
  TemperatureHistory history{TemperatureHistory::Between::sloped, {}};
  history.readings.reserve(readings.size() + 1);
  const TemperatureReading* before = nullptr;
  for (const TemperatureReading& reading : readings) {
    if (reading.at < from) {
      before = &reading;
      continue;
    }
    if (history.readings.empty()) {
      if (before == nullptr) {
        from = reading.at;
      } else {
        const double share = (from - before->at) / (reading.at - before->at);
        history.readings.push_back(
            {Seconds{}, celsius(before->concrete.degrees +
                                (reading.concrete.degrees - before->concrete.degrees) * share)});
      }
    }
    history.readings.push_back({reading.at - from, reading.concrete});
  }
  return history;
}

// When the last concrete came, of each bay where any stands.
std::vector<Seconds> last_of_bays(const PourState& state, std::size_t element) {
  std::vector<Seconds> all;
  for (const trade::TopCurve& top : state.elements[element].tops) {
    const auto came = top.standing() > Length{} ? top.reached(top.standing()) : std::nullopt;
    if (came) all.push_back(*came);
  }
  return all;
}

MaturityAt matured(const PourState& state, std::size_t element, Seconds came,
                   const event::ConcreteTemp& place,
                   const std::vector<TemperatureReading>& readings) {
  const Element& planned = state.plan->elements[element];
  MaturityAt at{place.z, place.x, readings.size(), came, came, {}, {}, {}};
  const TemperatureHistory history = history_of(readings, at.from);
  at.to = at.from;
  if (history.readings.empty()) return at;
  const Seconds until = history.readings.back().at;
  at.to = at.from + until;
  const auto age = trade::least_equivalent_age(history, until, mix_at(state, element, came).set_q);
  const auto degrees = trade::nurse_saul(history, until);
  if (!age || !degrees) return at;  // readings over more than a year
  at.equivalent_age = *age;
  at.nurse_saul = *degrees;
  at.strength = trade::strength_at(planned.strength_curve, *age);
  return at;
}

}  // namespace

std::optional<Seconds> last_concrete(const PourState& state, std::size_t element) {
  std::optional<Seconds> last;
  for (const Seconds came : last_of_bays(state, element)) {
    last = std::max(last.value_or(came), came);
  }
  return last;
}

std::optional<Seconds> last_set(const PourState& state, std::size_t element) {
  const auto sets = set_steps(state, element, SetSide::late);
  std::optional<Seconds> last;
  for (const Seconds came : last_of_bays(state, element)) {
    const Seconds set = trade::sets_at(sets, came);
    last = std::max(last.value_or(set), set);
  }
  return last;
}

std::vector<MaturityAt> maturity(const PourState& state, std::size_t element, Seconds until) {
  const auto came = last_concrete(state, element);
  if (!came) return {};
  std::vector<const event::ConcreteTemp*> places;
  std::vector<std::vector<TemperatureReading>> readings;
  for (const ConcreteTempState& temp : state.concrete_temps) {
    if (temp.element != element || temp.at > until) continue;
    const auto known = std::find_if(
        places.begin(), places.end(),
        [&](const event::ConcreteTemp* place) { return same_place(*place, temp.what); });
    const auto index = static_cast<std::size_t>(known - places.begin());
    if (known == places.end()) {
      places.push_back(&temp.what);
      readings.emplace_back();
    }
    readings[index].push_back({temp.at, temp.what.temp});
  }
  std::vector<MaturityAt> all;
  all.reserve(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) {
    all.push_back(matured(state, element, *came, *places[i], readings[i]));
  }
  return all;
}

std::optional<Pressure> StrengthShown::counts() const {
  if (by_maturity && by_specimens) return std::min(*by_maturity, *by_specimens);
  return by_maturity ? by_maturity : by_specimens;
}

StrengthShown strength_shown(const PourState& state, std::size_t element, Seconds at) {
  StrengthShown shown;
  const auto came = last_concrete(state, element);
  if (!came) return shown;
  const auto places = maturity(state, element, at);
  for (const MaturityAt& place : places) {
    if (!place.strength) {  // one that shows nothing leaves the whole unshown
      shown.by_maturity.reset();
      break;
    }
    shown.by_maturity = std::min(shown.by_maturity.value_or(*place.strength), *place.strength);
  }
  const auto loads = loads_at(state, element, *came);
  double oldest = 0;
  for (const SpecimenState& specimen : state.specimens) {
    const double days = specimen.what.age_days;
    if (specimen.at > at || days * 86400 > in_seconds(at - *came)) continue;
    if (std::none_of(loads.begin(), loads.end(), [&](std::size_t load) {
          return state.trucks[load].ticket == specimen.ticket;
        })) {
      continue;
    }
    const Pressure strength = specimen.what.strength;
    if (days > oldest) {
      oldest = days;
      shown.by_specimens = strength;
    } else if (days == oldest) {
      shown.by_specimens = std::min(shown.by_specimens.value_or(strength), strength);
    }
  }
  return shown;
}

bool strength_judged(const PourState& state, std::size_t element, Seconds at) {
  return !state.plan->elements[element].strength_curve.empty() ||
         strength_shown(state, element, at).by_specimens;
}

Seconds cured_for(const PourState& state, std::size_t element, Seconds came, Seconds until) {
  Seconds total{};
  for (const CureState& cure : state.cures) {
    if (cure.element != element) continue;
    const Seconds from = std::max(cure.from, came);
    const Seconds to = std::min(cure.to.value_or(until), until);
    if (to > from) total += to - from;
  }
  return total;
}

}  // namespace rb
