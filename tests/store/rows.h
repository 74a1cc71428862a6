// Rows of an invented book, without a database: as many as asked for, chained.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "store/file/identity.h"
#include "store/file/row_text.h"

namespace rb::samples {

using store::KeptRow;

inline store::BookName some_name(char c = 'a') {
  return {std::string(36, c), "7K3MD", 1772427900000};
}

/// The next row behind `rows`; `text` makes it this long at least.
inline KeptRow next_row(const store::BookName& name, const std::vector<KeptRow>& rows,
                        const std::string& text = "rain") {
  const auto seq = static_cast<std::int64_t>(rows.size()) + 1;
  KeptRow kept{{.seq = seq,
                .pour = "N1",
                .id = store::event_id(name.tag, seq).text,
                .line = R"({"do":"note","text":")" + text + "\"}",
                .entered = 1772427900000 + 1000 * seq,
                .steady = 1000.1 * static_cast<double>(seq),
                .boot = "a-start",
                .kept = 1772427900000 + 1000 * seq,
                .previous = rows.empty() ? store::hash_of(name) : rows.back().hash},
               {}};
  kept.hash = store::hash_of(kept.row);
  return kept;
}

inline std::vector<KeptRow> some_rows(const store::BookName& name, int count) {
  std::vector<KeptRow> rows;
  for (int i = 0; i < count; ++i) rows.push_back(next_row(name, rows));
  return rows;
}

/// The hash at a number, as the book of `rows` has it.
inline auto hashes_of(const store::BookName& name, const std::vector<KeptRow>& rows) {
  return [&](std::int64_t seq) -> Result<std::optional<store::Hash>> {
    if (seq == 0) return std::optional(store::hash_of(name));
    if (seq > static_cast<std::int64_t>(rows.size())) return std::optional<store::Hash>{};
    return std::optional(rows[static_cast<std::size_t>(seq) - 1].hash);
  };
}

inline std::vector<KeptRow> part(const std::vector<KeptRow>& rows, std::size_t from,
                                 std::size_t to) {
  return {rows.begin() + static_cast<std::ptrdiff_t>(from),
          rows.begin() + static_cast<std::ptrdiff_t>(to)};
}

}  // namespace rb::samples
