// `calc set|knit`: when concrete sets, and how long two lifts may lie apart.
#include <fmt/format.h>

#include <sstream>

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

Result<Seconds> time_to_set(const SetWish& wish) {
  OptionReading read;
  const Seconds initial = read.get(read_time("--initial-set", wish.initial_set));
  const trade::SettingRate rate{read.get(read_temperature("--reference", wish.reference)), {}};
  if (!wish.history.empty()) {
    const auto history = read.get(read_history("--history", wish.history));
    if (read.error()) return Failed{*read.error()};
    return trade::time_to_reach(initial, history, rate);
  }
  const Celsius temperature = read.get(read_temperature("--temp", wish.temperature));
  if (read.error()) return Failed{*read.error()};
  return trade::time_to_reach(initial, temperature, rate);
}

void set_source() {
  fmt::print("Equivalent age (ASTM C1074), Q = 5000 K from memory. The mix's own test decides.\n");
}

}  // namespace

Exit calc_set(const SetWish& wish) {
  const auto time = time_to_set(wish);
  if (!time) return report(time.error());
  if (wish.history.empty()) {
    const auto reference = read_temperature("--reference", wish.reference);
    const auto temperature = read_temperature("--temp", wish.temperature);
    say("rate against the reference",
        fmt::format("{:.4f}", trade::rate_factor(*temperature, {*reference, {}})));
  }
  say("time to initial set", fmt::format("{:.2f} h", in_hours(*time)));
  set_source();
  return Exit::fine;
}

Exit calc_knit(const KnitWish& wish) {
  const auto sets = time_to_set(wish.set);
  if (!sets) return report(sets.error());
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
  say("initial set", span_text(*sets));
  say("a lift takes", span_text(*place + run * static_cast<double>(rows)));
  say("joint's age when knitted, no pause", span_text(working));
  if (working >= *sets) {
    say("longest pause between lifts", "none: it has set before it is knitted");
  } else {
    say("longest pause between lifts", span_text(*sets - working));
  }
  set_source();
  return working >= *sets ? Exit::findings : Exit::fine;
}

}  // namespace rb
