// Moments in time: always UTC, kept to the millisecond, written as RFC 3339.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.h"

namespace rb {

using Moment = std::chrono::sys_time<std::chrono::milliseconds>;

/// Reads an RFC 3339 time ("2026-03-02T05:10:00.000Z" or with an offset such as +02:00; fractions
/// of a second are kept to the millisecond). Nothing on any other text.
std::optional<Moment> parse_moment(std::string_view text);

/// Writes RFC 3339 UTC with exactly three decimals of a second.
std::string to_text(Moment moment);

/// "05:10:00" in the given offset from UTC.
std::string clock_text(Moment moment, std::chrono::minutes utc_offset = std::chrono::minutes{0});

/// "2026-03-02" in the given offset from UTC.
std::string day_text(Moment moment, std::chrono::minutes utc_offset = std::chrono::minutes{0});

/// The start of a day written YYYY-MM-DD, at the given offset from UTC. Nothing on other text.
std::optional<Moment> parse_day(std::string_view text,
                                std::chrono::minutes utc_offset = std::chrono::minutes{0});

constexpr Seconds between(Moment from, Moment to) {
  return Seconds{to - from};
}

/// The moment a span after another, rounded to the nearest millisecond.
inline Moment after(Moment moment, Seconds span) {
  return moment + std::chrono::round<std::chrono::milliseconds>(span);
}

}  // namespace rb
