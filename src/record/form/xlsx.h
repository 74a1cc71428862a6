// The record as a workbook: a first sheet that says what it is, with the day's figures and the
// maps, then one sheet a table that has rows. Numbers are numbers in the pour's units, times are
// local dates and times; the heading names unit and offset. Texts stay texts, whatever they begin
// with.
#pragma once

#include <string>

#include "base/result.h"
#include "record/model/daily_record.h"

namespace rb {

/// The workbook's bytes; the same for the same record. Error: input, where it could not be made.
Result<std::string> to_xlsx(const DailyRecord& record);

}  // namespace rb
