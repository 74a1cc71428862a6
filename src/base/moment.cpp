#include "base/moment.h"

#include <date/date.h>

#include <cctype>

namespace rb {

namespace {

// date::parse forgives too much (missing digits, trailing text); the shape is checked first.
bool shaped(std::string_view text, std::string_view shape) {
  if (text.size() != shape.size()) return false;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const bool digit = std::isdigit(static_cast<unsigned char>(text[i])) != 0;
    if (shape[i] == '0' ? !digit : text[i] != shape[i]) return false;
  }
  return true;
}

unsigned number(std::string_view digits) {
  unsigned value = 0;
  for (const char c : digits) value = value * 10 + static_cast<unsigned>(c - '0');
  return value;
}

// "YYYY-MM-DD", already known to have that shape.
std::optional<date::sys_days> calendar_day(std::string_view text) {
  const date::year_month_day day{date::year{static_cast<int>(number(text.substr(0, 4)))},
                                 date::month{number(text.substr(5, 2))},
                                 date::day{number(text.substr(8, 2))}};
  if (!day.ok()) return std::nullopt;
  return date::sys_days{day};
}

}  // namespace

std::optional<Moment> parse_moment(std::string_view text) {
  constexpr std::string_view kStem = "0000-00-00T00:00:00";
  if (text.size() <= kStem.size() || !shaped(text.substr(0, kStem.size()), kStem)) {
    return std::nullopt;
  }
  const auto day = calendar_day(text);
  const unsigned hour = number(text.substr(11, 2));
  const unsigned minute = number(text.substr(14, 2));
  const unsigned second = number(text.substr(17, 2));
  if (!day || hour > 23 || minute > 59 || second > 59) return std::nullopt;
  std::string_view rest = text.substr(kStem.size());
  int millis = 0;
  if (rest.front() == '.') {
    std::size_t digits = 1;
    while (digits < rest.size() && std::isdigit(static_cast<unsigned char>(rest[digits])) != 0) {
      ++digits;
    }
    if (digits == 1) return std::nullopt;
    for (std::size_t i = 1; i <= 3; ++i) millis = millis * 10 + (i < digits ? rest[i] - '0' : 0);
    rest = rest.substr(digits);
  }
  std::chrono::minutes offset{0};
  if (rest != "Z" && rest != "z") {
    if (!shaped(rest, "+00:00") && !shaped(rest, "-00:00")) return std::nullopt;
    const unsigned ahead_h = number(rest.substr(1, 2));
    const unsigned ahead_min = number(rest.substr(4, 2));
    if (ahead_h > 23 || ahead_min > 59) return std::nullopt;
    offset = std::chrono::minutes{ahead_h * 60 + ahead_min} * (rest[0] == '-' ? -1 : 1);
  }
  return Moment{day->time_since_epoch()} + std::chrono::hours{hour} + std::chrono::minutes{minute} +
         std::chrono::seconds{second} + std::chrono::milliseconds{millis} - offset;
}

std::string to_text(Moment moment) {
  return date::format("%Y-%m-%dT%H:%M:%SZ", moment);
}

std::string clock_text(Moment moment, std::chrono::minutes utc_offset) {
  return date::format("%H:%M:%S", date::floor<std::chrono::seconds>(moment + utc_offset));
}

std::string day_text(Moment moment, std::chrono::minutes utc_offset) {
  return date::format("%Y-%m-%d", date::floor<std::chrono::seconds>(moment + utc_offset));
}

std::optional<Moment> parse_day(std::string_view text, std::chrono::minutes utc_offset) {
  if (!shaped(text, "0000-00-00")) return std::nullopt;
  const auto day = calendar_day(text);
  if (!day) return std::nullopt;
  return Moment{day->time_since_epoch()} - utc_offset;
}

}  // namespace rb
