#include "pour/outlook/measured_set.h"

#include <algorithm>
#include <map>
#include <vector>

#include "pour/outlook/set_clock.h"
#include "trade/concrete/penetration.h"
#include "trade/concrete/setting.h"

namespace rb {

namespace {

using Sample = std::vector<const PenetrationState*>;

// How warm a sample was, from when it was mixed.
trade::TemperatureHistory warmth(const PourState& state, const Mix& mix, Moment mixed,
                                 const Sample& sample) {
  trade::TemperatureHistory history;
  history.between = trade::TemperatureHistory::Between::sloped;
  for (const PenetrationState* reading : sample) {
    if (reading->what.temp) {
      history.readings.push_back({reading->at - state.clock(mixed), *reading->what.temp});
    }
  }
  if (!history.readings.empty()) return history;
  Celsius concrete = mix.set_reference;
  for (const TestState& test : state.tests) {  // in order of time
    if (test.at <= sample.front()->at && test.what.temp) concrete = *test.what.temp;
  }
  history.readings.push_back({Seconds{}, concrete});
  return history;
}

std::optional<MeasuredSet> set_of(const PourState& state, const Mix& mix, Moment mixed,
                                  const Sample& sample) {
  if (sample.size() < static_cast<std::size_t>(kFewestPenetrations)) return std::nullopt;
  std::vector<trade::PenetrationReading> readings;
  for (const PenetrationState* reading : sample) {
    readings.push_back({reading->at - state.clock(mixed), reading->what.resistance});
  }
  const auto fit = trade::fit_penetration(readings);
  if (!fit || fit->correlation < kLeastCorrelation) return std::nullopt;
  const auto set = trade::set_time(*fit);
  if (!set) return std::nullopt;
  const auto history = warmth(state, mix, mixed, sample);
  MeasuredSet found{{}, {}, fit->readings, 1, set->beyond_readings};
  bool first = true;
  for (const auto q : {mix.set_q.value_or(trade::kQuickSet), mix.set_q.value_or(trade::kSlowSet)}) {
    const trade::SettingRate reference{mix.set_reference, q};
    const auto early = trade::equivalent_age(history, set->early, reference);
    const auto late = trade::equivalent_age(history, set->late, reference);
    if (!early || !late) return std::nullopt;
    found.early = first ? *early : std::min(found.early, *early);
    found.late = first ? *late : std::max(found.late, *late);
    first = false;
  }
  if (found.beyond_readings) {
    found.early = std::min(found.early, mix.initial_set);
    found.late = std::max(found.late, mix.initial_set);
  }
  return found;
}

}  // namespace

std::optional<MeasuredSet> measured_set(const PourState& state, const Mix& mix) {
  std::map<Moment, Sample> samples;
  for (const PenetrationState& reading : state.penetrations) {  // in order of time
    if (reading.what.mix == mix.id) samples[reading.what.mixed].push_back(&reading);
  }
  std::optional<MeasuredSet> all;
  for (const auto& [mixed, sample] : samples) {
    const auto one = set_of(state, mix, mixed, sample);
    if (!one) continue;
    if (!all) {
      all = one;
      continue;
    }
    all->early = std::min(all->early, one->early);
    all->late = std::max(all->late, one->late);
    all->readings += one->readings;
    ++all->samples;
    all->beyond_readings = all->beyond_readings && one->beyond_readings;
  }
  return all;
}

}  // namespace rb
