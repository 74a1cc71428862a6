// How far the system's time zone is ahead of UTC.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "base/moment.h"
#include "base/result.h"
#include "record/model/daily_record.h"

namespace rb {

std::chrono::minutes system_utc_offset(Moment moment);

/// A day of the system's time zone, YYYY-MM-DD: 23 or 25 hours where its clocks are changed then.
/// Nothing on other text.
std::optional<LocalDay> system_day(const std::string& day);

/// What --utc-offset was given: "+02:00", "-05:30", "Z"; none when it was not.
Result<std::optional<std::chrono::minutes>> read_utc_offset(const std::string& text);

}  // namespace rb
