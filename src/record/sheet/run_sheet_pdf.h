// The run sheet drawn on paper.
#pragma once

#include "base/result.h"
#include "record/pdf/paper.h"
#include "record/sheet/run_sheet.h"

namespace rb {

/// PDF as bytes. Text is 11 points at the least, but for the feet of the pages. Error (input): the
/// drawing library ran out of something.
Result<std::string> to_pdf(const RunSheet& sheet, Paper paper);

}  // namespace rb
