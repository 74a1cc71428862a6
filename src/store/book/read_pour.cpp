#include "store/book/read_pour.h"

#include <utility>

#include "store/file/keeping.h"

namespace rb::store {

std::optional<std::string> unknown_kind(const std::string& line, const SQLite::Database& json) {
  SQLite::Statement kind(json, "SELECT ?1 ->> '$.do' WHERE json_valid(?1)");
  kind.bind(1, line);
  if (!kind.executeStep() || !kind.getColumn(0).isText()) return std::nullopt;
  auto word = kind.getColumn(0).getString();
  return is_kind(word) ? std::nullopt : std::optional(std::move(word));
}

PourRead read_rows(SQLite::Statement& rows, const SQLite::Database& json,
                   const std::string& where) {
  PourRead read;
  while (rows.executeStep()) {
    const auto row = row_of(rows);
    const auto bad = [&] {
      read.damaged.push_back({row.seq, EventId{row.id}, PourId{row.pour}, false});
    };
    if (hash_of(row) != hash_column(rows, 9)) {
      bad();
      continue;
    }
    if (auto event = event_of(row, where)) {
      read.events.push_back(std::move(*event));
    } else if (auto kind = unknown_kind(row.line, json)) {
      read.set_aside.push_back({EventId{row.id}, std::move(*kind), row.line});
    } else {
      bad();
    }
  }
  return read;
}

}  // namespace rb::store
