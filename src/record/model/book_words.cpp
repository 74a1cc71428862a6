#include "record/model/book_words.h"

#include <fmt/format.h>

#include "base/short_code.h"
#include "words/sentence.h"

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

std::string head_words(const BookFacts& book, Language language) {
  const Facts facts{{"event", std::to_string(book.head_event)},
                    {"hash", book.head_hash},
                    {"code", head_code(book)}};
  const bool numbered = book.head_event > 0;
  const bool coded = !head_code(book).empty();
  const Said words = numbered && coded ? said("event {event}, hash {hash}, short code {code}")
                     : numbered        ? said("event {event}, hash {hash}")
                     : coded           ? said("hash {hash}, short code {code}")
                                       : said("hash {hash}");
  return words_of(Saying{words, facts}, Voice{.language = language});
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
  Table table{"book", said("Book").english, {}, {}};
  table.columns = {{"tag", said("Book").english},
                   {"events", said("Events").english, Measure::count},
                   {"head_event", said("Newest event").english, Measure::count},
                   {"head_hash", said("Its hash").english},
                   {"short_code", said("Short code").english},
                   {"verified", said("Verified").english},
                   {"damage", said("Damage").english}};
  table.rows.push_back(std::move(row));
  return table;
}

}  // namespace rb
