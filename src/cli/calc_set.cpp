// `calc set|knit`: when concrete sets, and how long two lifts may lie apart.
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <sstream>
#include <vector>

#include "cli/calc.h"
#include "cli/say_both.h"
#include "cli/unit_input.h"
#include "trade/concrete/placing.h"
#include "trade/concrete/setting.h"

namespace rb {

namespace {

// "0 h 18 C, 3 h 24 C": straight between.
Result<trade::TemperatureHistory> read_history(const std::string& option, const std::string& text) {
  trade::TemperatureHistory history;
  history.between = trade::TemperatureHistory::Between::sloped;
  std::istringstream parts{text};
  for (std::string part; std::getline(parts, part, ',');) {
    part.erase(0, part.find_first_not_of(' '));
    std::istringstream words{part};
    std::string amount;
    std::string unit;
    std::string warmth;
    words >> amount >> unit;
    std::getline(words, warmth);
    warmth.erase(0, warmth.find_first_not_of(' '));
    const auto at = read_time(option, amount.append(" ").append(unit));
    if (!at) return Failed{at.error()};
    const auto concrete = read_temperature(option, warmth);
    if (!concrete) return Failed{concrete.error()};
    history.readings.push_back({*at, *concrete});
  }
  return history;
}

// The two ends of the time to set: the same where the mix's Q is known.
struct SetTime {
  Seconds early{}, late{};
};

Result<std::vector<trade::ActivationTemperature>> read_q(const std::string& text) {
  if (text.empty()) return std::vector{trade::kQuickSet, trade::kSlowSet};
  OptionReading read;
  const int kelvin = read.get(read_count("--q", text));
  if (read.error()) return Failed{*read.error()};
  return std::vector{trade::ActivationTemperature{static_cast<double>(kelvin)}};
}

Result<SetTime> time_to_set(const SetWish& wish) {
  OptionReading read;
  const Seconds initial = read.get(read_time("--initial-set", wish.initial_set));
  const Celsius reference = read.get(read_temperature("--reference", wish.reference));
  trade::TemperatureHistory history;
  if (wish.history.empty()) {
    history.readings.push_back({Seconds{}, read.get(read_temperature("--temp", wish.temperature))});
  } else {
    history = read.get(read_history("--history", wish.history));
  }
  const auto all = read.get(read_q(wish.q));
  if (read.error()) return Failed{*read.error()};
  std::optional<SetTime> found;
  for (const trade::ActivationTemperature q : all) {
    const auto time = trade::time_to_reach(initial, history, {reference, q});
    if (!time) return Failed{time.error()};
    found = found ? SetTime{std::min(found->early, *time), std::max(found->late, *time)}
                  : SetTime{*time, *time};
  }
  return *found;
}

void set_source(const SetWish& wish) {
  if (wish.q.empty()) {
    fmt::print(
        "No --q given: taken by default Q = {:.0f} K and {:.0f} K, our own choice; the early side "
        "is "
        "for what must be done before it sets, the late for what must wait.\n",
        trade::kQuickSet.kelvin, trade::kSlowSet.kelvin);
  }
  fmt::print(
      "Equivalent age (ASTM C1074), counted from water meeting cement. The mix's own test "
      "decides.\n");
}

}  // namespace

Exit calc_set(const SetWish& wish) {
  const auto time = time_to_set(wish);
  if (!time) return report(time.error());
  if (wish.history.empty()) {
    const auto reference = read_temperature("--reference", wish.reference);
    const auto temperature = read_temperature("--temp", wish.temperature);
    const auto all = read_q(wish.q);
    for (const trade::ActivationTemperature q : *all) {
      say("rate against the reference",
          fmt::format("{:.4f} by Q {:.0f} K", trade::rate_factor(*temperature, {*reference, q}),
                      q.kelvin));
    }
  }
  say("time to initial set, early side", fmt::format("{:.2f} h", in_hours(time->early)));
  say("time to initial set, late side", fmt::format("{:.2f} h", in_hours(time->late)));
  set_source(wish);
  return Exit::fine;
}

Exit calc_knit(const KnitWish& wish) {
  const auto time = time_to_set(wish.set);
  if (!time) return report(time.error());
  const Seconds sets = time->early;
  OptionReading read;
  const Length lift = read.get(read_length("--lift", wish.lift));
  const Velocity rise = read.get(read_rise("--rise", wish.rise));
  const Seconds run = read.get(read_time("--run", wish.run));
  const int rows = read.get(read_count("--rows", wish.rows));
  if (read.error()) return report(*read.error());
  const auto place = trade::placing_time(lift, rise);
  if (!place) return report(place.error());
  // The joint comes when a lift is placed; its rows run, then the next lift is placed and run.
  const Seconds working = *place + run * (2.0 * rows);
  say("initial set, early side", span_text(sets));
  say("a lift takes", span_text(*place + run * static_cast<double>(rows)));
  say("joint's age when knitted, no pause", span_text(working));
  if (working >= sets) {
    say("longest pause between lifts", "none: it has set before it is knitted");
  } else {
    say("longest pause between lifts", span_text(sets - working));
  }
  set_source(wish.set);
  return working >= sets ? Exit::findings : Exit::fine;
}

}  // namespace rb
