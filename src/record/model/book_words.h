// What a record says of the book's head, so that the book can be held against it later.
#pragma once

#include <string>

#include "record/model/daily_record.h"
#include "record/model/table.h"

namespace rb {

/// Ten characters for the head's hash, as they are photographed; empty where there is no hash.
std::string head_code(const BookFacts& book);

/// "event 78, hash 9f2c..., short code QC6RK-2KKSM"; what is not known is left out.
std::string head_words(const BookFacts& book, Language language = {});

/// The book as a table of one line, for files that have no page to say it on.
Table book_table(const DailyRecord& record);

}  // namespace rb
