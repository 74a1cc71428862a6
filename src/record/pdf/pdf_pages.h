// What stands on the pages of the record, in which order.
#pragma once

#include "record/model/daily_record.h"
#include "record/pdf/paper_table.h"

namespace rb {

/// Draws every page; returns how many there were. `pages` is the number they are told to say.
int draw_pages(cairo_t* cr, const DailyRecord& record, Paper paper, int pages, TypeWidths& widths);

}  // namespace rb
