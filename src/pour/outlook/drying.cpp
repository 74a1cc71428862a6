#include "pour/outlook/drying.h"

#include <algorithm>

#include "pour/outlook/hardening.h"
#include "pour/outlook/loads.h"
#include "pour/outlook/set_clock.h"

namespace rb {

namespace {

Celsius slab_temperature(const PourState& state, std::size_t element, Seconds at, Celsius air) {
  std::optional<Celsius> warmest;
  for (const TestState& test : state.tests) {
    if (test.at > at || !test.what.temp) continue;
    if (!may_be_of(state, test, element)) continue;
    warmest = std::max(warmest.value_or(*test.what.temp), *test.what.temp);
  }
  const ConcreteTempState* latest = nullptr;
  for (const ConcreteTempState& temp : state.concrete_temps) {
    if (temp.element == element && temp.at <= at) latest = &temp;
  }
  if (latest != nullptr) warmest = std::max(warmest.value_or(latest->what.temp), latest->what.temp);
  if (warmest) return *warmest;
  const Mix& mix = mix_at(state, element, at);
  return mix.temp_high.value_or(std::max(mix.set_reference, air));
}

}  // namespace

std::optional<Drying> fastest_drying(const PourState& state, std::size_t element, Seconds until) {
  const ElementState& there = state.elements[element];
  if (state.plan->elements[element].kind != ElementKind::deck || there.lifts.empty()) return {};
  if (state.weather.empty()) return {};
  const Seconds first = there.lifts.front().started;
  const auto set = last_set(state, element);
  const Seconds last = std::min(until, set.value_or(until));
  const auto shielded =
      std::find_if(state.cures.begin(), state.cures.end(),
                   [&](const CureState& cure) { return cure.element == element; });
  std::optional<Drying> fastest;
  for (std::size_t i = 0; i < state.weather.size(); ++i) {
    const WeatherState& weather = state.weather[i];
    if (!weather.what.humidity || !weather.what.wind) continue;
    const Seconds from = std::max(weather.at, first);
    if (from > last || (shielded != state.cures.end() && from >= shielded->from)) continue;
    const bool over = i + 1 < state.weather.size() && state.weather[i + 1].at <= first;
    if (over) continue;  // before any concrete came
    const Celsius concrete = slab_temperature(state, element, from, weather.what.temp);
    const auto rate = trade::evaporation(
        concrete, {weather.what.temp, {*weather.what.humidity / 100}, *weather.what.wind});
    if (!rate || (fastest && *rate <= fastest->rate)) continue;
    fastest = Drying{
        *rate, from, concrete, weather.what.temp, *weather.what.humidity, *weather.what.wind};
  }
  return fastest;
}

}  // namespace rb
