// The record on paper as a document to be kept: made to PDF/A-3, conformance B (ISO 19005-3; not
// seen, second hand), not validated. The record's JSON is attached as the data it was made of.
#pragma once

#include <string>

#include "base/result.h"
#include "record/model/daily_record.h"

namespace rb {

/// The document's bytes, the same for the same record: pages, fonts embedded, the output intent
/// (sRGB), metadata dated by the record, and the attached JSON. Error: input, naming what a library
/// said.
/// `json`: what is attached; empty: to_json(record).
Result<std::string> to_archive_pdf(const DailyRecord& record, const std::string& json = {});

}  // namespace rb
