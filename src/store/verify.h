// A look through the whole book for anything changed, missing or unreadable.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

#include "store/logbook.h"

namespace rb::store {

/// Reads everything once, in one consistent view. Throws SQLite::Exception when the file cannot be
/// read through (itself a fault to report).
void verify(SQLite::Database& database, VerifyReport& report);

/// The same of what rests on some pours only.
void verify_pours(SQLite::Database& database, const std::vector<PourId>& pours,
                  VerifyReport& report);

}  // namespace rb::store
