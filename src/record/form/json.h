// The record as JSON: SI, unrounded, times RFC 3339 UTC with milliseconds, absent = null. Each row
// carries beside its values the texts that its reader sees ("shown", in the record's language and
// units; headings and units under "tables"). Its schema is published in db/record.schema.json.
#pragma once

#include <string>

#include "record/model/daily_record.h"

namespace rb {

std::string to_json(const DailyRecord& record);

}  // namespace rb
