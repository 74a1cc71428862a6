#include "cli/say_both.h"

#include <fmt/format.h>

#include <cmath>

namespace rb {

void say(const char* what, const std::string& figures) {
  fmt::print("{:<34} {}\n", what, figures);
}

std::string both(Pressure p) {
  return fmt::format("{:.2f} kPa  ({:.0f} psf)", in_kilopascals(p), in_psf(p));
}
std::string both(Velocity v) {
  return fmt::format("{:.3f} m/h  ({:.2f} ft/h)", in_metres_per_hour(v), in_feet_per_hour(v));
}
std::string both(Length l) {
  return fmt::format("{:.3f} m  ({:.2f} ft)", in_metres(l), in_feet(l));
}
std::string both(Force f) {
  return fmt::format("{:.1f} N  ({:.1f} lbf)", in_newtons(f), in_pounds_force(f));
}
std::string both(Volume v) {
  return fmt::format("{:.2f} m3  ({:.2f} yd3)", in_cubic_metres(v), in_cubic_yards(v));
}
std::string both(Celsius t) {
  return fmt::format("{:.1f} C  ({:.1f} F)", t.degrees, t.fahrenheit());
}

std::string span_text(Seconds s) {
  const auto whole = static_cast<long>(std::lround(s.count()));
  if (whole < 180) return fmt::format("{} s", whole);
  const long minutes = std::lround(s.count() / 60);
  if (minutes < 60) return fmt::format("{} min", minutes);
  return fmt::format("{} h {:02} min", minutes / 60, minutes % 60);
}

void default_taken(const char* what, const std::string& figures) {
  fmt::print("Taken by default: {} {}.\n", what, figures);
}

void caution(const char* who) {
  fmt::print("This figure advises. Local codes, {} and licensed practice decide.\n", who);
}

}  // namespace rb
