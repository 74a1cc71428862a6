// The record as one page that stands alone: no script, picture or type from elsewhere. What it says
// is in the record's language and units, as on paper; a touch on a face tells what happened there.
#pragma once

#include <string>

#include "record/model/daily_record.h"

namespace rb {

std::string to_html(const DailyRecord& record);

}  // namespace rb
