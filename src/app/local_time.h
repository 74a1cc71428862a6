// How far the system's time zone is ahead of UTC.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "base/moment.h"

namespace rb {

std::chrono::minutes system_utc_offset(Moment moment);

/// "+02:00", "-05:30", "Z".
std::optional<std::chrono::minutes> parse_utc_offset(const std::string& text);

}  // namespace rb
