#include "store/book/pour_index.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <vector>

#include "pour/log/event.h"

namespace rb::store {

namespace {

struct IndexEntry {
  std::string pour;
  std::int64_t seq = 0;
  bool operator==(const IndexEntry&) const = default;
};

/// Events between a pour's first and last that are looked at, beside four for each of its own.
constexpr std::int64_t kMostBetween = 4096;

std::vector<std::int64_t> numbers(SQLite::Statement& rows) {
  std::vector<std::int64_t> found;
  while (rows.executeStep()) found.push_back(rows.getColumn(0).getInt64());
  return found;
}

/// The entry next to one, on either side; none at the index's end.
std::optional<IndexEntry> beside(const SQLite::Database& database, const IndexEntry& entry,
                                 bool after) {
  SQLite::Statement row(
      database, fmt::format("SELECT pour, seq FROM events INDEXED BY events_of_pour "
                            "WHERE (pour, seq) {} (?, ?) ORDER BY pour {}, seq {} LIMIT 1",
                            after ? ">" : "<", after ? "ASC" : "DESC", after ? "ASC" : "DESC"));
  row.bind(1, entry.pour);
  row.bind(2, entry.seq);
  if (!row.executeStep()) return std::nullopt;
  return IndexEntry{row.getColumn(0).getString(), row.getColumn(1).getInt64()};
}

/// The first or the last entry of the index.
std::optional<IndexEntry> outermost(const SQLite::Database& database, bool last) {
  SQLite::Statement row(database,
                        fmt::format("SELECT pour, seq FROM events INDEXED BY events_of_pour "
                                    "ORDER BY pour {}, seq {} LIMIT 1",
                                    last ? "DESC" : "ASC", last ? "DESC" : "ASC"));
  if (!row.executeStep()) return std::nullopt;
  return IndexEntry{row.getColumn(0).getString(), row.getColumn(1).getInt64()};
}

/// Whether what stands beside an end of the pour's run is another pour's, and the run ends there:
/// an entry gone wrong stands there out of its order, and is met from one of the two sides.
bool end_holds(const SQLite::Database& database, const IndexEntry& end, bool last) {
  const auto other = beside(database, end, last);
  if (!other) return outermost(database, last) == end;
  if (other->pour == end.pour || beside(database, *other, !last) != end) return false;
  SQLite::Statement row(database, "SELECT pour FROM events NOT INDEXED WHERE seq = ?");
  row.bind(1, other->seq);
  return row.executeStep() && row.getColumn(0).getString() == other->pour;
}

}  // namespace

std::optional<std::string> pour_index_fault(const SQLite::Database& database, const PourId& pour) {
  const auto fault = fmt::format("The index of pour {} does not fit its events", pour.text);
  SQLite::Statement by_index(database,
                             "SELECT seq FROM events INDEXED BY events_of_pour WHERE pour = ?");
  by_index.bind(1, pour.text);
  const auto found = numbers(by_index);
  SQLite::Statement mark(database, "SELECT first FROM pours WHERE pour = ?");
  mark.bind(1, pour.text);
  const bool marked = mark.executeStep();
  if (found.empty()) return marked ? std::optional(fault) : std::nullopt;
  const auto last = found.back();
  const auto first = marked ? mark.getColumn(0).getInt64() : found.front();
  if (first != found.front()) return fault;
  if (last - first <= kMostBetween + 4 * static_cast<std::int64_t>(found.size())) {
    SQLite::Statement by_row(
        database, "SELECT seq FROM events NOT INDEXED WHERE seq BETWEEN ? AND ? AND pour = ?");
    by_row.bind(1, first);
    by_row.bind(2, last);
    by_row.bind(3, pour.text);
    if (numbers(by_row) != found) return fault;
  }
  const bool holds = end_holds(database, {pour.text, first}, false) &&
                     end_holds(database, {pour.text, last}, true);
  return holds ? std::nullopt : std::optional(fault);
}

}  // namespace rb::store
