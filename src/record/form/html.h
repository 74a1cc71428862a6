// The record as one page that stands alone: no script, picture or type from elsewhere. What it says
// is in the record's language and units, as on paper; a touch on a face tells what happened there.
#pragma once

#include <string>

#include "record/model/daily_record.h"

namespace rb {

/// Bytes of photos that a page carries at the most: more, and a telephone no longer opens it.
inline constexpr std::size_t kMostPagePhotos = 24U << 20U;

std::string to_html(const DailyRecord& record, std::size_t most_photos = kMostPagePhotos);

}  // namespace rb
