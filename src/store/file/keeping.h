// Adding rows to a book and reading them back.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <string>

#include "base/result.h"
#include "pour/log/event.h"
#include "store/file/chain.h"

namespace rb::store {

/// The last event of the book, or its start.
struct Head {
  std::int64_t seq = 0;
  Hash hash{};
};

/// Throws SQLite::Exception, of code SQLITE_CORRUPT when the book has no head.
Head head_of(const SQLite::Database& database);

/// A statement in use: reset and cleared when this goes, so that the next use begins afresh and no
/// read stays open.
class Use {
 public:
  explicit Use(SQLite::Statement& statement) : statement_(statement) {}
  Use(const Use&) = delete;
  Use& operator=(const Use&) = delete;
  ~Use();
  SQLite::Statement* operator->() { return &statement_; }

 private:
  SQLite::Statement& statement_;
};

/// The prepared statements by which a book is written. All of them throw SQLite::Exception and are
/// called inside the caller's transaction.
class Keeping {
 public:
  explicit Keeping(const SQLite::Database& database);

  Head head();
  bool has_pour(const PourId& pour);
  bool has_event(const PourId& pour, const EventId& event);

  /// Adds one event behind `head`, which moves. It comes back as the book will always give it;
  /// refused (kind input) when its line could not be read back.
  Result<Event> keep(const PourId& pour, Event event, const Entry& entry, Moment kept,
                     const std::string& tag, Head& head);

 private:
  SQLite::Statement head_, has_pour_, has_event_, insert_;
};

/// Columns seq, pour, id, line, entered, steady, boot, kept, prev_hash, hash in this order.
inline constexpr const char* kRowColumns =
    "seq, pour, id, line, entered, steady, boot, kept, prev_hash, hash";
Row row_of(const SQLite::Statement& at);
Hash hash_column(const SQLite::Statement& at, int column);

/// The event a row holds; an Error of kind book that names it when its line cannot be read.
Result<Event> event_of(const Row& row, const std::string& where);

}  // namespace rb::store
