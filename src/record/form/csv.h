// The record as comma-separated values (RFC 4180): one text a table, UTF-8, CRLF, a header line,
// SI with the unit at the end of the column's name, times RFC 3339 UTC, absent = empty.
// A text that a spreadsheet would take for a formula (= + - @ at its start) gets an apostrophe in
// front; numbers never do.
#pragma once

#include <string>

#include "record/model/table.h"

namespace rb {

std::string to_csv(const Table& table);

}  // namespace rb
