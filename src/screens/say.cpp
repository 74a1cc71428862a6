#include "screens/say.h"

#include <algorithm>
#include <cmath>

namespace rb::screens {

namespace {

std::string feet_and_inches(Length height) {
  const auto halves = static_cast<long>(std::lround(in_inches(height) * 2));
  const long size = std::labs(halves);
  const long ft = size / 24;
  const long in = size % 24 / 2;
  const char* half = size % 2 != 0 ? "\u00BD" : "";
  const char* sign = halves < 0 ? "\u2212" : "";
  if (in == 0 && *half != '\0') return fmt::format("{}{}\u2032 {}\u2033", sign, ft, half);
  return fmt::format("{}{}\u2032 {}{}\u2033", sign, ft, in, half);
}

}  // namespace

std::string Say::height(Length height) const {
  if (units == Units::us) return feet_and_inches(height);
  return fmt::format("{:.2f} m", in_metres(height));
}

std::string Say::height_bare(Length height) const {
  if (units == Units::us) return feet_and_inches(height);
  return fmt::format("{:.2f}", in_metres(height));
}

std::string Say::pressure(Pressure pressure) const {
  return pressure_bare(pressure) + (units == Units::us ? " psf" : " kPa");
}

std::string Say::pressure_bare(Pressure pressure) const {
  if (units == Units::us) return fmt::format("{:.0f}", in_psf(pressure));
  return fmt::format("{:.0f}", in_kilopascals(pressure));
}

std::string Say::rise(Velocity rise) const {
  return rise_bare(rise) + (units == Units::us ? " ft/h" : " m/h");
}

std::string Say::rise_bare(Velocity rise) const {
  return fmt::format("{:.1f}",
                     units == Units::us ? in_feet_per_hour(rise) : in_metres_per_hour(rise));
}

std::string Say::temperature(Celsius temperature) const {
  if (units == Units::us) return fmt::format("{:.0f} \u00B0F", temperature.fahrenheit());
  return fmt::format("{:.0f} \u00B0C", temperature.degrees);
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

std::string Say::figure(double value, const std::string& unit) const {
  if (unit == "s") return value < 600 ? fmt::format("{:.0f} s", value) : span_text(Seconds{value});
  if (unit == "kPa") return pressure(kilopascals(value));
  if (unit == "m/h") return rise(metres_per_hour(value));
  if (unit == "m") return height(metres(value));
  if (unit == "degC") return temperature(celsius(value));
  if (unit == "1") return fmt::format("{:.1f} %", value * 100);
  if (unit == "m3" && units == Units::us) {
    return fmt::format("{:.1f} yd\u00B3", in_cubic_yards(cubic_metres(value)));
  }
  if (unit == "m3") return fmt::format("{:.1f} m\u00B3", value);
  if (unit.empty()) return fmt::format("{:g}", value);
  return fmt::format("{:.3g} {}", value, unit);
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
