#include "store/book/opening_look.h"

#include <fmt/format.h>

#include "store/book/read_marks.h"
#include "store/file/identity.h"
#include "store/file/keeping.h"
#include "store/salvage/lost_record.h"

namespace rb::store {

std::optional<std::string> look_at_end(const SQLite::Database& database, const BookName& name,
                                       int hashes) {
  const auto head = head_of(database);
  const auto lost = lost_in(database);
  const auto start = start_of(lost, name);
  SQLite::Statement rows(database, fmt::format("SELECT {} FROM events ORDER BY seq DESC LIMIT {}",
                                               kRowColumns, hashes));
  Head next = head;
  Hash before{};
  int count = 0;
  while (rows.executeStep()) {
    const auto row = row_of(rows);
    const auto hash = hash_column(rows, 9);
    const auto at = over_lost(lost, {row.seq, hash});
    if (count == 0 && (at.seq != head.seq || at.hash != head.hash)) {
      return fmt::format("The book ends at event {}; it had gone on to {}", row.id,
                         event_id(name.tag, head.seq).text);
    }
    if (count > 0 && (at.seq + 1 != next.seq || at.hash != before)) {
      return fmt::format("Event {} does not follow the event before it",
                         event_id(name.tag, next.seq).text);
    }
    if (hash_of(row) != hash || row.id != event_id(name.tag, row.seq).text) {
      return fmt::format("Event {} was changed after it was kept", row.id);
    }
    ++count;
    next = {row.seq, hash};
    before = row.previous;
  }
  if (count == 0 && (head.seq != start.seq || head.hash != start.hash)) {
    return "The book has no event; it had gone on to " + event_id(name.tag, head.seq).text;
  }
  if (count > 0 && (hashes == kEveryHash || count < hashes) && next.seq != start.seq + 1) {
    return fmt::format("Event {} is missing", event_id(name.tag, next.seq - 1).text);
  }
  if (count > 0 && next.seq == start.seq + 1 && before != start.hash) {
    return "The first event does not follow the book's own name";
  }
  return std::nullopt;
}

std::optional<std::string> look_through(const SQLite::Database& database) {
  SQLite::Statement check(database, "PRAGMA quick_check(1)");
  if (!check.executeStep()) return "The file cannot be looked through";
  const auto word = check.getColumn(0).getString();
  return word == "ok" ? std::nullopt : std::optional("The file is damaged: " + word);
}

std::optional<std::string> look_at_order(const SQLite::Database& database) {
  {
    SQLite::Statement check(database, "PRAGMA integrity_check(1)");
    if (!check.executeStep()) return "The file cannot be looked through";
    const auto word = check.getColumn(0).getString();
    if (word != "ok") return "The file is damaged: " + word;
  }
  auto faults = mark_faults(database);
  return faults.empty() ? std::nullopt : std::optional(std::move(faults.front()));
}

}  // namespace rb::store
