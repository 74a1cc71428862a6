#include "store/file/keeping.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <cmath>

#include "pour/log/event_json.h"
#include "store/file/identity.h"

namespace rb::store {

namespace {

std::int64_t millis(Moment moment) {
  return moment.time_since_epoch().count();
}
Moment moment(std::int64_t millis) {
  return Moment{std::chrono::milliseconds{millis}};
}

void bind_hash(SQLite::Statement& statement, int index, const Hash& hash) {
  statement.bind(index, hash.data(), static_cast<int>(hash.size()));
}

constexpr const char* kHead = "SELECT seq, hash FROM head";

Head head_at(SQLite::Statement& statement) {
  if (!statement.executeStep()) {
    throw SQLite::Exception("the head of the book is missing", SQLITE_CORRUPT);
  }
  return {statement.getColumn(0).getInt64(), hash_column(statement, 1)};
}

}  // namespace

Use::~Use() {
  statement_.tryReset();
  statement_.clearBindings();
}

Keeping::Keeping(const SQLite::Database& database)
    : head_(database, kHead),
      has_pour_(database, "SELECT 1 FROM events WHERE pour = ? LIMIT 1"),
      has_event_(database, "SELECT 1 FROM events WHERE seq = ? AND id = ? AND pour = ?"),
      insert_(database, fmt::format("INSERT INTO events ({}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                                    kRowColumns)) {}

Head Keeping::head() {
  Use use(head_);
  return head_at(head_);
}

Head head_of(const SQLite::Database& database) {
  SQLite::Statement head(database, kHead);
  return head_at(head);
}

bool Keeping::has_pour(const PourId& pour) {
  Use use(has_pour_);
  use->bind(1, pour.text);
  return use->executeStep();
}

bool Keeping::has_event(const PourId& pour, const EventId& event) {
  Use use(has_event_);
  use->bind(1, seq_in(event));
  use->bind(2, event.text);
  use->bind(3, pour.text);
  return use->executeStep();
}

Result<Event> Keeping::keep(const PourId& pour, Event event, const Entry& entry, Moment kept,
                            const std::string& tag, Head& head) {
  event.id = EventId{};
  event.entry.reset();
  if (!std::isfinite(entry.steady.count())) {
    return fail(Error::Kind::input, "entry", "the steady clock's reading is not a number");
  }
  Row row{.seq = head.seq + 1,
          .pour = pour.text,
          .id = event_id(tag, head.seq + 1).text,
          .line = to_line(event),
          .entered = millis(entry.wall),
          .steady = entry.steady.count() + 0.0,  // SQLite keeps no negative zero
          .boot = entry.boot,
          .kept = millis(kept),
          .previous = head.hash};
  auto again = parse_event(row.line, kind_text(event.what));
  if (!again) return again;
  const auto hash = hash_of(row);
  Use use(insert_);
  use->bind(1, row.seq);
  use->bind(2, row.pour);
  use->bind(3, row.id);
  use->bind(4, row.line);
  use->bind(5, row.entered);
  use->bind(6, row.steady);
  use->bind(7, row.boot);
  use->bind(8, row.kept);
  bind_hash(insert_, 9, row.previous);
  bind_hash(insert_, 10, hash);
  use->exec();
  head = {row.seq, hash};
  again->id = EventId{row.id};
  again->entry = Entry{entry.wall, Seconds{row.steady}, entry.boot, kept};
  return again;
}

Row row_of(const SQLite::Statement& at) {
  return {.seq = at.getColumn(0).getInt64(),
          .pour = at.getColumn(1).getString(),
          .id = at.getColumn(2).getString(),
          .line = at.getColumn(3).getString(),
          .entered = at.getColumn(4).getInt64(),
          .steady = at.getColumn(5).getDouble(),
          .boot = at.getColumn(6).getString(),
          .kept = at.getColumn(7).getInt64(),
          .previous = hash_column(at, 8)};
}

Hash hash_column(const SQLite::Statement& at, int column) {
  const auto blob = at.getColumn(column);
  Hash hash{};
  if (blob.getBytes() == static_cast<int>(hash.size())) {
    std::copy_n(static_cast<const unsigned char*>(blob.getBlob()), hash.size(), hash.begin());
  }
  return hash;
}

Result<Event> event_of(const Row& row, const std::string& where) {
  auto event = parse_event(row.line, fmt::format("{}, event {}", where, row.id), Bounds::as_it_is);
  if (!event) {
    auto error = event.error();
    error.kind = Error::Kind::book;
    error.trouble = BookTrouble::damaged;
    error.remedy = "Run verify on the book to see what else is damaged";
    return Failed{std::move(error)};
  }
  event->id = EventId{row.id};
  event->entry = Entry{moment(row.entered), Seconds{row.steady}, row.boot, moment(row.kept)};
  return event;
}

}  // namespace rb::store
