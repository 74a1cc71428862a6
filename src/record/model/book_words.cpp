#include "record/model/book_words.h"

#include <fmt/format.h>

#include "base/short_code.h"

namespace rb {

namespace {

void add(std::vector<Cell>& row, const std::string& text) {
  if (text.empty()) {
    row.emplace_back();
  } else {
    row.emplace_back(text);
  }
}

}  // namespace

std::string head_code(const BookFacts& book) {
  return short_code(book.head_hash);
}

std::string head_words(const BookFacts& book) {
  std::string words = "hash " + book.head_hash;
  if (book.head_event > 0) words = fmt::format("event {}, {}", book.head_event, words);
  if (const std::string code = head_code(book); !code.empty()) words += ", short code " + code;
  return words;
}

Table book_table(const DailyRecord& record) {
  const BookFacts& book = record.book;
  std::vector<Cell> row;
  add(row, book.tag);
  row.emplace_back(static_cast<double>(book.events));
  if (book.head_event > 0) {
    row.emplace_back(static_cast<double>(book.head_event));
  } else {
    row.emplace_back();
  }
  for (const auto& text : {book.head_hash, head_code(book), book.looked, book.damage}) {
    add(row, text);
  }
  Table table{"book", "Book", {}, {}};
  table.columns = {{"tag", "Book"},
                   {"events", "Events", Measure::count},
                   {"head_event", "Newest event", Measure::count},
                   {"head_hash", "Its hash"},
                   {"short_code", "Short code"},
                   {"verified", "Verified"},
                   {"damage", "Damage"}};
  table.rows.push_back(std::move(row));
  return table;
}

}  // namespace rb
