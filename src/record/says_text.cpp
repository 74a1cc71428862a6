#include "record/says_text.h"

#include <array>
#include <cctype>
#include <cstdlib>
#include <string_view>
#include <utility>

#include "record/measure.h"

namespace rb {

namespace {

// Longer units first: "m/h" before "m".
constexpr std::array<std::pair<std::string_view, Measure>, 8> kWords{{
    {"kN/m3", Measure::unit_weight},
    {"kg/m3", Measure::density},
    {"kg/m2", Measure::mass_per_area},
    {"degC", Measure::temperature},
    {"kPa", Measure::pressure},
    {"m/h", Measure::rate},
    {"m3", Measure::volume},
    {"m", Measure::length},
}};

bool letter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '/';
}

// The unit that begins at `at`, whole as a word; nothing otherwise.
const std::pair<std::string_view, Measure>* unit_at(std::string_view text, std::size_t at) {
  for (const auto& unit : kWords) {
    if (text.substr(at, unit.first.size()) != unit.first) continue;
    const std::size_t end = at + unit.first.size();
    if (end >= text.size() || !letter(text[end])) return &unit;
  }
  return nullptr;
}

bool digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && std::isdigit(static_cast<unsigned char>(text[at])) != 0;
}

// Where a number that stands free begins: not inside a name, a date or another number.
bool number_at(std::string_view text, std::size_t at) {
  const bool sign = text[at] == '-' || text[at] == '+';
  if (!digit_at(text, sign ? at + 1 : at)) return false;
  return at == 0 || std::string_view{" (,;:\n"}.find(text[at - 1]) != std::string_view::npos;
}

std::size_t number_end(std::string_view text, std::size_t at) {
  std::size_t end = at;
  if (text[end] == '-' || text[end] == '+') ++end;
  while (digit_at(text, end)) ++end;
  if (end < text.size() && text[end] == '.' && digit_at(text, end + 1)) {
    ++end;
    while (digit_at(text, end)) ++end;
  }
  return end;
}

// What may stand between a number and the next one that carries the unit for both.
constexpr std::array<std::string_view, 3> kJoins{" x ", " to ", " and "};

const std::pair<std::string_view, Measure>* unit_after(std::string_view text, std::size_t end) {
  if (end < text.size() && text[end] == ' ') {
    if (const auto* unit = unit_at(text, end + 1)) return unit;
  }
  for (const std::string_view join : kJoins) {
    if (text.substr(end, join.size()) != join) continue;
    const std::size_t next = end + join.size();
    if (!digit_at(text, next)) continue;
    const std::size_t next_end = number_end(text, next);
    if (next_end < text.size() && text[next_end] == ' ') {
      return unit_at(text, next_end + 1);
    }
  }
  return nullptr;
}

}  // namespace

std::string in_units(const std::string& sentence, Units units) {
  const std::string_view text{sentence};
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = number_at(text, at) ? number_end(text, at) : at;
    const auto* unit = end > at ? unit_after(text, end) : nullptr;
    if (unit == nullptr) {
      const std::size_t stop = end > at ? end : at + 1;
      out += text.substr(at, stop - at);
      at = stop;
      continue;
    }
    const double value = std::strtod(std::string{text.substr(at, end - at)}.c_str(), nullptr);
    out += shown_text(value, unit->second, units);
    at = end;
    if (text.substr(end + 1, unit->first.size()) == unit->first) {
      out += std::string{" "} + unit_text(unit->second, units);
      at = end + 1 + unit->first.size();
    }
  }
  return out;
}

}  // namespace rb
