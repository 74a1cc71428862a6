#include "store/book/verify.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "store/book/connection.h"
#include "store/book/read_marks.h"
#include "store/book/read_pour.h"
#include "store/book/verify_note.h"
#include "store/book/verify_people.h"
#include "store/file/device_key.h"
#include "store/file/identity.h"
#include "store/file/keeping.h"
#include "store/file/migrations.h"
#include "store/salvage/lost_record.h"

namespace rb::store {

namespace {

void check_events(const SQLite::Database& database, const BookName& book, VerifyReport& report) {
  const auto lost = lost_in(database);
  report.lost = lost_events(database, book.tag);
  Head head = start_of(lost, book);
  PeopleLook people(database, book, !report.lost.empty());
  SQLite::Statement rows(database, fmt::format("SELECT {} FROM events ORDER BY seq", kRowColumns));
  while (rows.executeStep()) {
    const auto row = row_of(rows);
    const auto stored = hash_column(rows, 9);
    const EventId id{row.id};
    if (row.seq != head.seq + 1) {
      const auto first = event_id(book.tag, head.seq + 1);
      const auto last = event_id(book.tag, row.seq - 1);
      note(report, first,
           first == last ? fmt::format("Event {} is missing", first.text)
                         : fmt::format("Events {} to {} are missing", first.text, last.text));
    } else if (row.previous != head.hash) {
      note(report, id, fmt::format("Event {} does not follow the event before it", row.id));
    }
    if (id != event_id(book.tag, row.seq)) {
      note(report, id, fmt::format("Event {} stands at number {}", row.id, row.seq));
    }
    if (hash_of(row) != stored) {
      note(report, id, fmt::format("Event {} was changed after it was kept", row.id));
    } else if (const auto event = event_of(row, "the book"); event) {
      people.look(row, *event, report);  // as it was kept
    } else if (unknown_kind(row.line, database)) {
      ++report.unknown;
    } else {
      note(report, id, fmt::format("Event {} cannot be read ({})", row.id, to_text(event.error())));
    }
    ++report.events;
    head = over_lost(lost, {row.seq, stored});
  }
  report.last = head.seq;
  SQLite::Statement kept(database, "SELECT seq, hash FROM head");
  if (!kept.executeStep()) {
    note(report, "The head of the book is missing");
    return;
  }
  const Head last{kept.getColumn(0).getInt64(), hash_column(kept, 1)};
  report.head_hash = to_hex(last.hash);
  if (last.seq > head.seq) {
    const auto first = event_id(book.tag, head.seq + 1);
    note(report, first,
         fmt::format("The book ends at event {}; it had gone on to {}",
                     head.seq == 0 ? std::string("none") : event_id(book.tag, head.seq).text,
                     event_id(book.tag, last.seq).text));
  } else if (last.seq != head.seq || last.hash != head.hash) {
    note(report, fmt::format("The head of the book does not fit its last event {}",
                             event_id(book.tag, head.seq).text));
  }
}

template <class Bytes>
bool read_bytes(const SQLite::Statement& at, int column, Bytes& bytes) {
  const auto blob = at.getColumn(column);
  if (blob.getBytes() != static_cast<int>(bytes.size())) return false;
  std::copy_n(static_cast<const unsigned char*>(blob.getBlob()), bytes.size(), bytes.begin());
  return true;
}

void check_signed_heads(const SQLite::Database& database, const BookName& book,
                        VerifyReport& report) {
  SQLite::Statement rows(database,
                         "SELECT h.seq, h.hash, h.key, h.signature, h.made, e.hash, k.key "
                         "FROM heads AS h LEFT JOIN events AS e ON e.seq = h.seq "
                         "LEFT JOIN keys AS k ON k.key = h.key ORDER BY h.seq, h.key");
  while (rows.executeStep()) {
    HeadClaim claim{book.uuid, rows.getColumn(0).getInt64(), hash_column(rows, 1),
                    rows.getColumn(4).getInt64()};
    const auto id = event_id(book.tag, claim.seq);
    PublicKey key{};
    Signature signature{};
    const bool whole = read_bytes(rows, 2, key) && read_bytes(rows, 3, signature);
    if (!whole || rows.getColumn(6).isNull() || !holds(claim, key, signature)) {
      note(report, fmt::format("The signature of the head at event {} does not hold", id.text));
    } else if (rows.getColumn(5).isNull() || hash_column(rows, 5) != claim.hash) {
      note(report, id,
           fmt::format("Event {} is not the one that device {} signed for", id.text,
                       short_name(key)));
    } else {
      report.signed_heads.push_back({claim.seq, to_hex(claim.hash), to_hex(key),
                                     Moment{std::chrono::milliseconds{claim.made}}});
    }
  }
}

void check_notes(const SQLite::Database& database, const BookName& book,
                 const std::vector<NoteBeside>& notes, VerifyReport& report) {
  SQLite::Statement at(database, "SELECT hash FROM events WHERE seq = ?");
  const auto verdict =
      judge_notes(notes, book, report.last, [&](std::int64_t seq) -> Result<std::optional<Hash>> {
        if (seq == 0) return std::optional(hash_of(book));
        Use use(at);
        use->bind(1, seq);
        return use->executeStep() ? std::optional(hash_column(at, 0)) : std::nullopt;
      });
  if (!verdict) return;
  for (const auto& fault : verdict->faults) note(report, fault);
  report.vouched = verdict->vouched;
  report.note_damaged = verdict->damaged;
}

void check_file(SQLite::Database& database, VerifyReport& report) {
  SQLite::Statement check(database, "PRAGMA integrity_check");
  while (check.executeStep()) {
    const auto word = check.getColumn(0).getString();
    if (word != "ok") note(report, "The file is damaged: " + word);
  }
}

}  // namespace

void verify(SQLite::Database& database, const std::vector<NoteBeside>& notes,
            VerifyReport& report) {
  SQLite::Transaction view(database);
  for (auto& fault : schema_faults(database, schema_version())) note(report, std::move(fault));
  const auto book = name_of(database);
  report.tag = book.tag;
  check_events(database, book, report);
  for (auto& fault : mark_faults(database)) note(report, std::move(fault));
  check_signed_heads(database, book, report);
  check_notes(database, book, notes, report);
  check_file(database, report);
}

}  // namespace rb::store
