// A book as the first version of its schema had it, made with that schema's own SQL.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include "pour/log/event.h"
#include "samples.h"
#include "store/file/chain.h"

namespace rb::samples {

/// Every row of events, as text, hashes in hexadecimal.
inline std::vector<std::string> rows_of(const fs::path& path) {
  SQLite::Database bare(path.string(), SQLite::OPEN_READONLY);
  SQLite::Statement rows(bare,
                         "SELECT seq || '|' || pour || '|' || id || '|' || line || '|' || entered "
                         "|| '|' || hex(steady) || '|' || boot || '|' || kept || '|' || "
                         "hex(prev_hash) || '|' || hex(hash) FROM events ORDER BY seq");
  std::vector<std::string> all;
  while (rows.executeStep()) all.push_back(rows.getColumn(0).getString());
  return all;
}

inline int version_of(const fs::path& path) {
  SQLite::Database bare(path.string(), SQLite::OPEN_READONLY);
  return bare.execAndGet("PRAGMA user_version").getInt();
}

/// A book of version 1 at `path` with the events of `lines`: pour and line of each.
inline void make_version_1(const fs::path& path,
                           const std::vector<std::pair<std::string, std::string>>& lines) {
  SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  bare.exec(bytes_of(fs::path(RISEBOOK_SOURCE_DIR) / "db" / "0001_book.sql"));
  bare.exec("PRAGMA user_version = 1; PRAGMA application_id = 1382642533");
  const store::BookName name{"01234567-89ab-4cde-8f01-23456789abcd", "K7M2P", 1772427600000};
  SQLite::Statement book(bare, "INSERT INTO book VALUES (1, ?, ?, ?)");
  book.bind(1, name.uuid);
  book.bind(2, name.tag);
  book.bind(3, name.created);
  book.exec();
  auto hash = store::hash_of(name);
  const auto bind = [](SQLite::Statement& at, int index, const store::Hash& value) {
    at.bind(index, value.data(), static_cast<int>(value.size()));
  };
  SQLite::Statement head(bare, "INSERT INTO head VALUES (1, 0, ?)");
  bind(head, 1, hash);
  head.exec();
  SQLite::Statement insert(bare, "INSERT INTO events VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  SQLite::Transaction whole(bare);
  std::int64_t seq = 0;
  for (const auto& [pour, line] : lines) {
    ++seq;
    const auto entered = name.created + 1000 * seq;
    const store::Row row{seq,       pour,    name.tag + "-" + std::to_string(seq),
                         line,      entered, 50.25 + static_cast<double>(seq),
                         "a-start", entered, hash};
    hash = store::hash_of(row);
    insert.bind(1, row.seq);
    insert.bind(2, row.pour);
    insert.bind(3, row.id);
    insert.bind(4, row.line);
    insert.bind(5, row.entered);
    insert.bind(6, row.steady);
    insert.bind(7, row.boot);
    insert.bind(8, row.kept);
    bind(insert, 9, row.previous);
    bind(insert, 10, hash);
    insert.exec();
    insert.reset();
  }
  whole.commit();
  bare.exec("PRAGMA journal_mode = WAL");
}

/// Two pours, the second closed, one close struck, and an event of a later program.
inline std::vector<std::pair<std::string, std::string>> two_pours() {
  std::vector<std::pair<std::string, std::string>> lines;
  const auto add = [&](const std::string& pour, Event event) {
    lines.emplace_back(pour, to_line(event));
  };
  add("N1", open_event("N1"));
  for (int i = 1; i < 40; ++i)
    add("N1", note("note " + std::to_string(i) + std::string(90, 'x'), i));
  add("N2", open_event("N2"));
  add("N2", note("next day", 24 * 60));
  add("N2", happening(event::PourClose{}, 24 * 60 + 5));
  add("N1", happening(event::PourClose{}, 50));
  add("N1", happening(event::Strike{EventId{"K7M2P-44"}, "not yet"}, 51));
  return lines;
}

}  // namespace rb::samples
