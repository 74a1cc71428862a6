#include "screens/words/say.h"

#include "base/feet_inches.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {

// Shorter than in the record: what is read at arm's length.
std::string rounded(const Amount& amount, int places, Units units, bool with_unit = true) {
  std::string text = fmt::format("{:.{}f}", rb::shown(amount.si, amount.measure, units), places);
  if (with_unit) text += std::string{" "} + unit_text(amount.measure, units);
  return text;
}

}  // namespace

Voice Say::voice() const {
  return {.language = language, .units = units, .utc_offset = utc_offset};
}

std::string Say::height(Length height) const {
  if (units == Units::us) return feet_and_inches(height);
  return fmt::format("{:.2f} m", in_metres(height));
}

std::string Say::height_bare(Length height) const {
  if (units == Units::us) return feet_and_inches(height);
  return fmt::format("{:.2f}", in_metres(height));
}

std::string Say::pressure(Pressure pressure) const {
  return rounded(rb::amount(pressure), 0, units);
}

std::string Say::pressure_bare(Pressure pressure) const {
  return rounded(rb::amount(pressure), 0, units, false);
}

std::string Say::rise(Velocity rise) const {
  return rounded(rb::amount(rise), 1, units);
}

std::string Say::rise_bare(Velocity rise) const {
  return rounded(rb::amount(rise), 1, units, false);
}

std::string Say::temperature(Celsius temperature) const {
  return rounded(rb::amount(temperature), 0, units);
}

std::string Say::clock(Moment moment) const {
  return clock_text(moment, utc_offset);
}

std::string Say::clock_short(Moment moment) const {
  return clock(moment).substr(0, 5);
}

std::string Say::day(Moment moment) const {
  return day_text(moment, utc_offset);
}

std::string Say::amount(const Amount& figure) const {
  switch (figure.measure) {
    case Measure::span:
    case Measure::age:
    case Measure::long_span:
      return figure.si < 600 ? fmt::format("{:.0f} s", figure.si) : span_text(Seconds{figure.si});
    case Measure::pressure:
      return pressure(kilopascals(figure.si));
    case Measure::rate:
      return rise(metres_per_hour(figure.si));
    case Measure::length:
      return height(metres(figure.si));
    case Measure::temperature:
      return temperature(celsius(figure.si));
    default:
      return amount_text(figure, units);
  }
}

std::string timer(Seconds span) {
  const auto whole = static_cast<long>(std::floor(std::max(span.count(), 0.0)));
  const long hours = whole / 3600;
  if (hours > 0) {
    return fmt::format("{}:{:02}:{:02}", hours, whole / 60 % 60, whole % 60);
  }
  return fmt::format("{}:{:02}", whole / 60, whole % 60);
}

std::string span_text(Seconds span) {
  const auto whole = static_cast<long>(std::floor(std::max(span.count(), 0.0)));
  if (whole < 60) return fmt::format("{} s", whole);
  if (whole < 3600) return fmt::format("{} min", whole / 60);
  return fmt::format("{} h {} min", whole / 3600, whole / 60 % 60);
}

int whole_seconds(Seconds span) {
  return static_cast<int>(std::ceil(std::max(span.count(), 0.0)));
}

}  // namespace rb::screens
