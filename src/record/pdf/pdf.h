// The record on paper: A4 for SI, Letter for US units. Fonts are embedded; the dates inside are the
// record's own, so the same record gives the same bytes.
#pragma once

#include <string>

#include "base/result.h"
#include "record/model/daily_record.h"

namespace rb {

/// The document's bytes. Error: input, naming what the drawing library said.
Result<std::string> to_pdf(const DailyRecord& record);

}  // namespace rb
