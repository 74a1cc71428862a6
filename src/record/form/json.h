// The record as JSON: SI, unrounded, times RFC 3339 UTC with milliseconds, absent = null.
#pragma once

#include <string>

#include "record/model/daily_record.h"

namespace rb {

std::string to_json(const DailyRecord& record);

}  // namespace rb
