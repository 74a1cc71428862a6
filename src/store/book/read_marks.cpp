#include "store/book/read_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <utility>

namespace rb::store {

namespace {

// The clocks of a tablet may drift apart this much before a day could be missed.
constexpr std::chrono::hours kDrift{1};

constexpr const char* kColumns =
    "pours.pour, name, site, opened, closed, first, "
    "(SELECT max(seq) FROM events WHERE events.pour = pours.pour)";

struct Days {
  std::int64_t first = 0, last = 0;
};

Days days_of(const MomentSpan& span) {
  const auto day = [](Moment moment) {
    return std::int64_t{std::chrono::floor<std::chrono::days>(moment).time_since_epoch().count()};
  };
  return {day(span.from - kDrift), day(span.to - std::chrono::milliseconds{1} + kDrift)};
}

PourMark mark_at(const SQLite::Statement& row) {
  return {.pour = PourId{row.getColumn(0).getString()},
          .name = row.getColumn(1).getString(),
          .site = row.getColumn(2).getString(),
          .opened = Moment{std::chrono::milliseconds{row.getColumn(3).getInt64()}},
          .closed = static_cast<PourMark::Closed>(std::clamp(row.getColumn(4).getInt(), 0, 2)),
          .first = row.getColumn(5).getInt64(),
          .last = row.getColumn(6).getInt64()};
}

/// `text` to be found anywhere, its own wildcards taken as letters.
std::string anywhere(const std::string& text) {
  std::string pattern = "%";
  for (const char c : text) {
    if (c == '%' || c == '_' || c == '\\') pattern += '\\';
    pattern += c;
  }
  return pattern + '%';
}

std::string condition(const PourQuery& query) {
  std::string where;
  const auto add = [&](const char* one) {
    where += (where.empty() ? " WHERE " : " AND ") + std::string(one);
  };
  if (!query.text.empty()) {
    add("(told LIKE :text ESCAPE '\\' OR pours.pour LIKE :text ESCAPE '\\')");
  }
  if (query.when) {
    add("pours.pour IN (SELECT pour FROM pour_days WHERE day BETWEEN :from AND :to)");
  }
  return where;
}

void bind(SQLite::Statement& statement, const PourQuery& query) {
  if (!query.text.empty()) statement.bind(":text", anywhere(query.text));
  if (query.when) {
    const auto days = days_of(*query.when);
    statement.bind(":from", days.first);
    statement.bind(":to", days.last);
  }
}

std::vector<PourId> ids(SQLite::Statement& rows) {
  std::vector<PourId> pours;
  while (rows.executeStep()) pours.emplace_back(rows.getColumn(0).getString());
  return pours;
}

}  // namespace

PourPage page_of_pours(const SQLite::Database& database, const PourQuery& query) {
  PourPage page;
  SQLite::Statement count(database, "SELECT count(*) FROM pours" + condition(query));
  bind(count, query);
  if (count.executeStep()) page.all = static_cast<std::size_t>(count.getColumn(0).getInt64());
  SQLite::Statement rows(
      database, fmt::format("SELECT {} FROM pours{} ORDER BY closed = 1, opened DESC, first "
                            "LIMIT :count OFFSET :first",
                            kColumns, condition(query)));
  bind(rows, query);
  rows.bind(":count", static_cast<std::int64_t>(query.count));
  rows.bind(":first", static_cast<std::int64_t>(query.first));
  while (rows.executeStep()) page.pours.push_back(mark_at(rows));
  return page;
}

std::optional<PourMark> find_pour(const SQLite::Database& database, const PourId& pour) {
  SQLite::Statement row(database, fmt::format("SELECT {} FROM pours WHERE pour = ?", kColumns));
  row.bind(1, pour.text);
  return row.executeStep() ? std::optional(mark_at(row)) : std::nullopt;
}

std::vector<PourId> all_pours(const SQLite::Database& database) {
  SQLite::Statement rows(database, "SELECT pour FROM pours ORDER BY first");
  return ids(rows);
}

std::vector<PourId> pours_in(const SQLite::Database& database, const MomentSpan& span) {
  const auto days = days_of(span);
  SQLite::Statement rows(database,
                         "SELECT pour FROM pours WHERE pour IN "
                         "(SELECT pour FROM pour_days WHERE day BETWEEN ? AND ?) ORDER BY first");
  rows.bind(1, days.first);
  rows.bind(2, days.last);
  return ids(rows);
}

std::vector<std::string> mark_faults(const SQLite::Database& database) {
  // Each gives the pours a mark is wrong of. What may name too much (days, after a correction) is
  // held only to naming enough.
  constexpr std::pair<const char*, const char*> kLooks[] = {
      {"SELECT pour FROM events GROUP BY pour "
       "HAVING min(seq) IS NOT (SELECT first FROM pours WHERE pours.pour = events.pour)",
       "The mark of pour {} does not tell its first event"},
      {"SELECT pour FROM pours WHERE NOT EXISTS "
       "(SELECT 1 FROM events WHERE events.pour = pours.pour AND seq = first)",
       "The mark of pour {} tells of no event in the book"},
      {"SELECT DISTINCT pour FROM events WHERE json_valid(line) "
       "AND unixepoch(line ->> '$.at') IS NOT NULL AND NOT EXISTS (SELECT 1 FROM pour_days "
       "WHERE pour_days.pour = events.pour "
       "AND day = unixepoch(line ->> '$.at', 'start of day') / 86400)",
       "A day of pour {} is not marked"},
      {"SELECT DISTINCT pour FROM events WHERE NOT EXISTS (SELECT 1 FROM pour_boots "
       "WHERE pour_boots.pour = events.pour AND pour_boots.boot = events.boot)",
       "A start of the tablet is not marked of pour {}"},
      // Its last word on being closed: a close, or the strike of a close or of a strike.
      {"SELECT pour FROM pours WHERE closed <> coalesce((SELECT iif(line ->> '$.do' = 'strike', 2, "
       "1) "
       "FROM events WHERE events.pour = pours.pour AND json_valid(line) "
       "AND (line ->> '$.do' = 'pour-close' OR (line ->> '$.do' = 'strike' AND EXISTS "
       "(SELECT 1 FROM events AS aim WHERE aim.pour = events.pour AND json_valid(aim.line) "
       "AND aim.seq = CAST(substr(events.line ->> '$.target', "
       "instr(events.line ->> '$.target', '-') + 1) AS INTEGER) "
       "AND aim.line ->> '$.do' IN ('pour-close', 'strike')))) ORDER BY seq DESC LIMIT 1), 0)",
       "The mark of pour {} is wrong about its being closed"},
      {"SELECT pours.pour FROM pours JOIN events ON seq = first WHERE json_valid(line) "
       "AND (opened <> coalesce(CAST(round((julianday(line ->> '$.at') - 2440587.5) * 86400000) "
       "AS INTEGER), entered) OR instr(told, coalesce(line ->> '$.plan.name', '')) = 0 "
       "OR instr(told, coalesce(line ->> '$.plan.site', '')) = 0 "
       "OR instr(told, name) = 0 OR instr(told, site) = 0)",
       "The mark of pour {} does not tell its name, site and opening"},
  };
  std::vector<std::string> faults;
  for (const auto& [sql, words] : kLooks) {
    SQLite::Statement rows(database, sql);
    while (rows.executeStep()) {
      faults.push_back(fmt::format(fmt::runtime(words), rows.getColumn(0).getString()));
    }
  }
  return faults;
}

}  // namespace rb::store
