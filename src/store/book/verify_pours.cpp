// A look at what rests on some pours of a book only.
#include <fmt/format.h>

#include "store/book/connection.h"
#include "store/book/opening_look.h"
#include "store/book/pour_index.h"
#include "store/book/read_pour.h"
#include "store/book/verify.h"
#include "store/book/verify_note.h"
#include "store/book/verify_people.h"
#include "store/file/identity.h"
#include "store/file/keeping.h"
#include "store/file/migrations.h"
#include "store/salvage/lost_record.h"

namespace rb::store {

namespace {

/// The hash of the event before, or of the book's own name before the first.
class Before {
 public:
  Before(const SQLite::Database& database, const BookName& book)
      : row_(database, "SELECT seq, hash FROM events WHERE seq < ? ORDER BY seq DESC LIMIT 1"),
        lost_(lost_in(database)),
        start_(start_of(lost_, book)) {}
  std::optional<Hash> of(std::int64_t seq) {
    Head at = start_;
    Use use(row_);
    use->bind(1, seq);
    if (use->executeStep()) at = over_lost(lost_, {use->getColumn(0), hash_column(row_, 1)});
    return at.seq + 1 == seq ? std::optional(at.hash) : std::nullopt;
  }

 private:
  SQLite::Statement row_;
  Lost lost_;
  Head start_;
};

void check_pour(const SQLite::Database& database, const BookName& book, Before& before,
                const PourId& pour, VerifyReport& report) {
  SQLite::Statement rows(
      database, fmt::format("SELECT {} FROM events WHERE pour = ? ORDER BY seq", kRowColumns));
  rows.bind(1, pour.text);
  if (auto fault = pour_index_fault(database, pour)) note(report, std::move(*fault));
  PeopleLook people(database, book, !report.lost.empty());
  while (rows.executeStep()) {
    const auto row = row_of(rows);
    if (before.of(row.seq) != row.previous) {
      note(report, EventId{row.id},
           fmt::format("Event {} does not follow the event before it", row.id));
    } else if (hash_of(row) != hash_column(rows, 9) || row.id != event_id(book.tag, row.seq).text) {
      note(report, EventId{row.id}, fmt::format("Event {} was changed after it was kept", row.id));
    } else if (const auto event = event_of(row, "the book"); event) {
      people.look(row, *event, report);
    } else {
      if (unknown_kind(row.line, database)) {
        ++report.unknown;
      } else {
        note(report, EventId{row.id}, fmt::format("Event {} cannot be read", row.id));
      }
    }
  }
}

}  // namespace

void verify_pours(SQLite::Database& database, const std::vector<PourId>& pours,
                  VerifyReport& report) {
  SQLite::Transaction view(database);
  for (auto& fault : schema_faults(database, schema_version())) note(report, std::move(fault));
  const auto book = name_of(database);
  report.tag = book.tag;
  if (auto fault = look_at_end(database, book)) note(report, std::move(*fault));
  report.lost = lost_events(database, book.tag);
  Before before(database, book);
  for (const auto& pour : pours) check_pour(database, book, before, pour, report);
  const auto head = head_of(database);
  report.events = static_cast<std::size_t>(head.seq);
  report.last = head.seq;
  report.head_hash = to_hex(head.hash);
  const Facts facts{{"count", std::to_string(kLastHashes)}};
  report.looked =
      pours.size() == 1
          ? Saying{said(
                       "the events of this pour with their hashes and places in the chain, and the "
                       "last {count} events of the book; risebook verify looks at the whole of it"),
                   facts}
          : Saying{
                said("the events of these pours with their hashes and places in the chain, and "
                     "the last {count} events of the book; risebook verify looks at the whole of "
                     "it"),
                facts};
}

}  // namespace rb::store
