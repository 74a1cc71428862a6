// A look through the whole book for anything changed, missing or unreadable.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>
#include <vector>

#include "store/book/head_note.h"
#include "store/book/logbook.h"

namespace rb::store {

/// Reads everything once, in one consistent view, and holds it against the notes of the head beside
/// it (read before). Throws SQLite::Exception when the file cannot be
/// read through (itself a fault to report).
void verify(SQLite::Database& database, const std::vector<NoteBeside>& notes, VerifyReport& report);

/// The same of what rests on some pours only.
void verify_pours(SQLite::Database& database, const std::vector<PourId>& pours,
                  VerifyReport& report);

}  // namespace rb::store
