// The pages of one pour. Inside this room.
#pragma once

#include "record/pdf/record_page.h"

namespace rb {

void draw_pour(RecordPage& page, const PourRecord& pour);

}  // namespace rb
