#include "trade/concrete/setting.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

constexpr double kColdest = -50.0;
constexpr double kHottest = 100.0;
constexpr double kLongestHours = 10000.0;

std::optional<Error> fault_of(const SettingRate& rate) {
  return outside(
      said("setting"),
      {{said("reference temperature"), rate.reference.degrees, kColdest, kHottest, "degC"},
       {said("activation temperature Q"), rate.q.kelvin, 1000.0, 10000.0, "K"}});
}

std::optional<Error> fault_of(Said name, Seconds span) {
  return outside(said("setting"), {{name, in_hours(span), 0.0, kLongestHours, "h"}});
}

std::optional<Error> fault_of(const TemperatureHistory& history) {
  if (history.readings.empty()) {
    return Error{Error::Kind::input, said("temperature history"), said("there is no reading"),
                 said("Give at least one concrete temperature")};
  }
  for (std::size_t i = 0; i < history.readings.size(); ++i) {
    const TemperatureReading& r = history.readings[i];
    const Saying where{said("temperature history, reading {number}"), {{"number", counted(i + 1)}}};
    if (auto fault = outside(where, {{said("time"), in_hours(r.at), 0.0, kLongestHours, "h"},
                                     {said("concrete temperature"), r.concrete.degrees, kColdest,
                                      kHottest, "degC"}})) {
      return fault;
    }
    if (i > 0 && r.at < history.readings[i - 1].at) {
      return Error{Error::Kind::input, where, said("it is earlier than the reading before it"),
                   said("Give the readings in order of time")};
    }
  }
  return std::nullopt;
}

// A stretch of time over which the temperature is constant or runs straight.
struct TemperatureStretch {
  double from, to;     // s
  double first, last;  // degC
  [[nodiscard]] double at(double t) const {
    return first == last ? first : first + (last - first) * (t - from) / (to - from);
  }
  [[nodiscard]] TemperatureStretch up_to(double t) const { return {from, t, first, at(t)}; }
};

std::vector<TemperatureStretch> stretches_of(const TemperatureHistory& history) {
  std::vector<TemperatureStretch> all;
  double from = 0.0;
  double held = history.readings.front().concrete.degrees;
  for (std::size_t i = 0; i < history.readings.size(); ++i) {
    const double to = in_seconds(history.readings[i].at);
    const double next = history.readings[i].concrete.degrees;
    const bool slopes = i > 0 && history.between == TemperatureHistory::Between::sloped;
    if (to > from) all.push_back({from, to, held, slopes ? next : held});
    from = to;
    held = next;
  }
  all.push_back({from, std::numeric_limits<double>::infinity(), held, held});
  return all;
}

// Gauss-Legendre, 5 points, over pieces of at most 5 K: exact to rounding for so smooth a curve.
double equivalent_seconds(const TemperatureStretch& s, const SettingRate& rate) {
  if (s.first == s.last) return (s.to - s.from) * rate_factor(Celsius{s.first}, rate);
  struct Node {
    double x, weight;
  };
  static constexpr std::array<Node, 5> kNodes{{{0.0, 0.5688888888888889},
                                               {-0.5384693101056831, 0.4786286704993665},
                                               {0.5384693101056831, 0.4786286704993665},
                                               {-0.9061798459386640, 0.2369268850561891},
                                               {0.9061798459386640, 0.2369268850561891}}};
  const int pieces = static_cast<int>(std::ceil(std::abs(s.last - s.first) / 5.0));
  const double width = (s.to - s.from) / pieces;
  double sum = 0.0;
  for (int i = 0; i < pieces; ++i) {
    const double middle = s.from + (i + 0.5) * width;
    for (const Node& node : kNodes) {
      sum += node.weight * rate_factor(Celsius{s.at(middle + node.x * width / 2.0)}, rate);
    }
  }
  return sum * width / 2.0;
}

// The moment within a stretch at which an equivalent age has been gained; the rate is never zero.
double moment_within(const TemperatureStretch& s, double equivalent, const SettingRate& rate) {
  if (s.first == s.last) return s.from + equivalent / rate_factor(Celsius{s.first}, rate);
  double early = s.from;
  double late = s.to;
  while (true) {
    const double middle = early + (late - early) / 2.0;
    if (middle <= early || middle >= late) return late;
    (equivalent_seconds(s.up_to(middle), rate) < equivalent ? early : late) = middle;
  }
}

double degree_seconds(const TemperatureStretch& s, double datum) {
  const double first = s.first - datum;
  const double last = s.last - datum;
  const double span = s.to - s.from;
  if (first >= 0.0 && last >= 0.0) return (first + last) / 2.0 * span;
  const double high = std::max(first, last);
  const double low = std::min(first, last);
  return high <= 0.0 ? 0.0 : high / 2.0 * span * high / (high - low);
}

// Sums a measure over the stretches from 0 to a time.
template <class Measure>
double total_until(const TemperatureHistory& history, Seconds until, const Measure& measure) {
  double total = 0.0;
  for (const TemperatureStretch& s : stretches_of(history)) {
    if (s.from >= in_seconds(until)) break;
    total += measure(s.to > in_seconds(until) ? s.up_to(in_seconds(until)) : s);
  }
  return total;
}

}  // namespace

double rate_factor(Celsius concrete, const SettingRate& rate) {
  return std::exp(-rate.q.kelvin * (1.0 / concrete.kelvin() - 1.0 / rate.reference.kelvin()));
}

Result<Seconds> time_to_reach(Seconds equivalent_age, Celsius concrete, const SettingRate& rate) {
  return time_to_reach(
      equivalent_age,
      TemperatureHistory{TemperatureHistory::Between::stepped, {{seconds(0.0), concrete}}}, rate);
}

Result<Seconds> time_to_reach(Seconds equivalent_age, const TemperatureHistory& history,
                              const SettingRate& rate) {
  if (auto fault = fault_of(rate)) return Failed(*std::move(fault));
  if (auto fault = fault_of(said("equivalent age"), equivalent_age))
    return Failed(*std::move(fault));
  if (auto fault = fault_of(history)) return Failed(*std::move(fault));
  double left = in_seconds(equivalent_age);
  for (const TemperatureStretch& s : stretches_of(history)) {
    const double gained = equivalent_seconds(s, rate);
    if (gained >= left) return seconds(moment_within(s, left, rate));
    left -= gained;
  }
  return seconds(std::numeric_limits<double>::infinity());  // not reached: the last has no end
}

Result<Seconds> equivalent_age(const TemperatureHistory& history, Seconds until,
                               const SettingRate& rate) {
  if (auto fault = fault_of(rate)) return Failed(*std::move(fault));
  if (auto fault = fault_of(said("time"), until)) return Failed(*std::move(fault));
  if (auto fault = fault_of(history)) return Failed(*std::move(fault));
  return seconds(total_until(
      history, until, [&](const TemperatureStretch& s) { return equivalent_seconds(s, rate); }));
}

Result<Maturity> nurse_saul(const TemperatureHistory& history, Seconds until, Celsius datum) {
  if (auto fault = fault_of(said("time"), until)) return Failed(*std::move(fault));
  if (auto fault =
          outside(said("maturity"), {{said("datum"), datum.degrees, kColdest, kHottest, "degC"}})) {
    return Failed(*std::move(fault));
  }
  if (auto fault = fault_of(history)) return Failed(*std::move(fault));
  return Maturity{total_until(history, until, [&](const TemperatureStretch& s) {
    return degree_seconds(s, datum.degrees);
  })};
}

}  // namespace rb::trade
