// The record's first page: the day, its pours in one table, the cautions. Inside this room.
#pragma once

#include "record/pdf/record_page.h"

namespace rb {

void draw_day_page(RecordPage& page);
/// The cautions in full, at the record's end.
void draw_cautions(RecordPage& page);

}  // namespace rb
