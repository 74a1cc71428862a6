// What a Logbook tells without writing.
#include <fmt/format.h>
#include <sqlite3.h>

#include <charconv>
#include <utility>

#include "pour/log/event.h"
#include "pour/log/fold.h"
#include "store/book/logbook_inside.h"
#include "store/book/opening_look.h"
#include "store/book/pour_index.h"
#include "store/book/read_marks.h"
#include "store/book/read_pour.h"
#include "store/book/verify.h"
#include "store/file/file_header.h"
#include "store/file/trouble.h"
#include "store/salvage/lost_record.h"

namespace rb {

using store::guarded;

namespace {

constexpr const char* kSummaries =
    "SELECT pour, min(line ->> '$.at'), max(line ->> '$.at'), count(*), "
    "(SELECT closed FROM pours WHERE pours.pour = events.pour) "
    "FROM events WHERE json_valid(line) GROUP BY pour ORDER BY min(seq)";
constexpr const char* kWithKind =
    "SELECT pour FROM events WHERE json_valid(line) AND line ->> '$.do' = ? GROUP BY pour "
    "ORDER BY max(seq) DESC";
constexpr const char* kPour = "the pour cannot be read";
constexpr const char* kPours = "the pours cannot be read";

Failed damaged(const std::string& where, const DamagedEvent& event) {
  return fail(Error::Kind::book, where,
              fmt::format("event {} is damaged or was changed after it was kept", event.id.text),
              "Run verify on the book to see what else is damaged");
}

Failed index_damaged(const std::string& where, const std::string& fault) {
  return fail(Error::Kind::book, where, "the book is damaged: " + fault,
              "Run verify on the book to see what else is damaged");
}

}  // namespace

std::optional<std::string> Logbook::Inside::index_fault(const PourId& pour) {
  return damage ? std::nullopt : store::pour_index_fault(*database, pour);
}

Result<PourRead> Logbook::Inside::read(const PourId& pour) {
  auto& in = *this;
  return guarded(in.path.string(), kPour, [&]() -> Result<PourRead> {
    store::Use use(in.events);
    use->bind(1, pour.text);
    auto read = store::read_rows(in.events, *in.database, in.path.string());
    if (const auto fault = in.index_fault(pour)) return index_damaged(in.path.string(), *fault);
    Damage known;
    if (in.damage) known = *in.damage;
    const auto recorded = store::lost_events(*in.database, in.name.tag);
    known.events.insert(known.events.end(), recorded.begin(), recorded.end());
    if (!known.events.empty()) {
      const auto mark = store::find_pour(*in.database, pour);
      const auto lost = damage_of(known, pour, mark ? mark->first : 0, mark ? mark->last : 0);
      read.damaged.insert(read.damaged.end(), lost.begin(), lost.end());
    }
    return read;
  });
}

const std::optional<std::string>& Logbook::Inside::order_fault() {
  if (damage || looked_at_order) return order_fault_found;
  looked_at_order = true;
  std::error_code error;
  const auto size = std::filesystem::file_size(path, error);
  if (error || size >= store::kTinyBook) return order_fault_found;
  const auto looked = guarded(path.string(), kPours, [&]() -> Result<std::optional<std::string>> {
    SQLite::Transaction view(*database);
    return store::look_at_order(*database);
  });
  order_fault_found = looked ? *looked : std::optional(looked.error().what.text());
  return order_fault_found;
}

template <class Ask>
auto Logbook::or_of_whole_rows(Ask&& ask) const -> decltype(ask(*inside_)) {
  auto& in = *inside_;
  const auto& fault = in.order_fault();
  auto answer = fault ? decltype(ask(in))(fail(Error::Kind::book, in.path.string(), *fault,
                                               "Run verify on the book"))
                      : ask(in);
  if (answer || in.damage) return answer;
  const auto whole = Inside::open_damaged(in.path, Access::read, answer.error());
  if (whole) return ask(**whole);
  return fault ? ask(in) : answer;  // as it stands
}

Result<PourRead> Logbook::read(const PourId& pour) const {
  return or_of_whole_rows([&](Inside& in) { return in.read(pour); });
}

Result<std::vector<Event>> Logbook::events(const PourId& pour) const {
  auto& in = *inside_;
  const auto where = in.path.string();
  return guarded(where, kPour, [&]() -> Result<std::vector<Event>> {
    store::Use use(in.events);
    use->bind(1, pour.text);
    auto read = store::read_rows(in.events, *in.database, where);
    if (!read.damaged.empty()) return damaged(where, read.damaged.front());
    if (const auto fault = in.index_fault(pour)) return index_damaged(where, *fault);
    return std::move(read.events);
  });
}

Result<std::vector<PourSummary>> Logbook::pours() const {
  return guarded(inside_->path.string(), kPours, [&]() -> Result<std::vector<PourSummary>> {
    SQLite::Statement rows(*inside_->database, kSummaries);
    std::vector<PourSummary> pours;
    while (rows.executeStep()) {
      auto& pour = pours.emplace_back(PourSummary{
          .pour = PourId{rows.getColumn(0).getString()},
          .first = parse_moment(rows.getColumn(1).getString()).value_or(Moment{}),
          .last = parse_moment(rows.getColumn(2).getString()).value_or(Moment{}),
          .count = static_cast<std::size_t>(rows.getColumn(3).getInt64()),
          .closed = rows.getColumn(4).getInt() == static_cast<int>(PourMark::Closed::yes)});
      if (rows.getColumn(4).getInt() != static_cast<int>(PourMark::Closed::ask)) continue;
      if (const auto events = this->events(pour.pour)) {
        const auto state = fold(*events);
        pour.closed = state && state->closed;
      }
    }
    return pours;
  });
}

Result<std::vector<PourId>> Logbook::pours_with(const std::string& kind) const {
  return guarded(inside_->path.string(), kPours, [&]() -> Result<std::vector<PourId>> {
    SQLite::Statement rows(*inside_->database, kWithKind);
    rows.bind(1, kind);
    std::vector<PourId> pours;
    while (rows.executeStep()) pours.emplace_back(rows.getColumn(0).getString());
    return pours;
  });
}

Result<std::vector<KeptHash>> Logbook::hashes(const PourId& pour) const {
  return guarded(inside_->path.string(), kPour, [&]() -> Result<std::vector<KeptHash>> {
    SQLite::Statement rows(*inside_->database,
                           "SELECT id, hash FROM events WHERE pour = ? ORDER BY seq");
    rows.bind(1, pour.text);
    std::vector<KeptHash> hashes;
    while (rows.executeStep()) {
      hashes.push_back(
          {EventId{rows.getColumn(0).getString()}, store::to_hex(store::hash_column(rows, 1))});
    }
    return hashes;
  });
}

std::optional<std::string> Logbook::hash_of_event(const EventId& id) const {
  const auto hash =
      guarded(inside_->path.string(), kPour, [&]() -> Result<std::optional<std::string>> {
        SQLite::Statement rows(*inside_->database,
                               "SELECT hash FROM events WHERE seq = ? AND id = ?");
        const std::size_t hyphen = id.text.rfind('-');
        const char* from = id.text.data() + (hyphen == std::string::npos ? 0 : hyphen + 1);
        std::int64_t seq = 0;
        const auto read = std::from_chars(from, id.text.data() + id.text.size(), seq);
        if (read.ec != std::errc{}) return std::optional<std::string>{};
        rows.bind(1, seq);
        rows.bind(2, id.text);
        if (!rows.executeStep()) return std::optional<std::string>{};
        return std::optional{store::to_hex(store::hash_column(rows, 0))};
      });
  return hash ? *hash : std::nullopt;
}

Result<PourPage> Logbook::pours(const PourQuery& query) const {
  return or_of_whole_rows([&](Inside& in) {
    return guarded(in.path.string(), kPours, [&]() -> Result<PourPage> {
      SQLite::Transaction view(*in.database);
      return store::page_of_pours(*in.database, query);
    });
  });
}

Result<std::optional<PourMark>> Logbook::mark(const PourId& pour) const {
  return or_of_whole_rows([&](Inside& in) {
    return guarded(in.path.string(), kPour, [&]() -> Result<std::optional<PourMark>> {
      return store::find_pour(*in.database, pour);
    });
  });
}

Result<std::vector<PourId>> Logbook::pour_ids() const {
  return or_of_whole_rows([&](Inside& in) {
    return guarded(in.path.string(), kPours,
                   [&]() -> Result<std::vector<PourId>> { return store::all_pours(*in.database); });
  });
}

Result<std::vector<PourId>> Logbook::pours_in(const MomentSpan& span) const {
  return or_of_whole_rows([&](Inside& in) {
    return guarded(in.path.string(), kPours, [&]() -> Result<std::vector<PourId>> {
      return store::pours_in(*in.database, span);
    });
  });
}

namespace {

/// What is known of a book that is read from its whole rows.
VerifyReport report_of(const Damage& damage, const std::string& tag, std::string head_hash) {
  VerifyReport report;
  report.tag = tag;
  report.events = damage.whole;
  report.last = damage.last;
  report.head_hash = std::move(head_hash);
  report.faults.push_back(damage.why);
  for (const DamagedEvent& event : damage.events) {
    if (!report.first_bad) report.first_bad = event.id;
    if (report.faults.size() < 50) {
      report.faults.push_back(
          fmt::format("Event {} is damaged: {}", event.id.text, what_of(event)));
    }
  }
  return report;
}

}  // namespace

Result<VerifyReport> Logbook::verify() const {
  if (inside_->damage) {
    return report_of(*inside_->damage, tag(), head_hash().value_or(std::string{}));
  }
  VerifyReport report;
  // Read before the book: a note runs behind a book that is being written, never ahead.
  const auto notes = store::read_notes(store::plain_disk(), inside_->path);
  const auto read =
      guarded(inside_->path.string(), "The book cannot be read through", [&]() -> Result<void> {
        report.faults = inside_->older_faults;
        store::verify(*inside_->database, notes, report);
        if (auto fault = store::header_fault(inside_->path)) {
          report.faults.push_back(std::move(*fault));
        }
        return {};
      });
  if (!read) report.faults.push_back(to_text(read.error()));
  return report;
}

Result<VerifyReport> Logbook::verify(const std::vector<PourId>& pours) const {
  if (inside_->damage) return verify();
  VerifyReport report;
  const auto read =
      guarded(inside_->path.string(), "The book cannot be read", [&]() -> Result<void> {
        report.faults = inside_->older_faults;
        if (const auto& fault = inside_->order_fault()) report.faults.push_back(*fault);
        store::verify_pours(*inside_->database, pours, report);
        return {};
      });
  if (!read) report.faults.push_back(to_text(read.error()));
  return report;
}

Result<std::vector<std::string>> Logbook::look_closely(const std::atomic<bool>& give_way) const {
  constexpr int kSteps = 10'000;  // of SQLite's machine, between two questions
  const auto where = inside_->path.string();
  if (inside_->damage) return report_of(*inside_->damage, tag(), {}).faults;
  auto* const handle = inside_->database->getHandle();
  const auto asked = [](void* stop) {
    return static_cast<const std::atomic<bool>*>(stop)->load() ? 1 : 0;
  };
  sqlite3_progress_handler(handle, kSteps, asked, const_cast<std::atomic<bool>*>(&give_way));
  auto faults = guarded(where, "The book cannot be looked through",
                        [&]() -> Result<std::vector<std::string>> {
                          VerifyReport report;
                          report.faults = inside_->older_faults;
                          store::verify(*inside_->database, {}, report);
                          if (auto fault = store::header_fault(inside_->path)) {
                            report.faults.push_back(std::move(*fault));
                          }
                          return std::move(report.faults);
                        });
  sqlite3_progress_handler(handle, 0, nullptr, nullptr);
  return faults;
}

Result<std::optional<std::string>> Logbook::look_through() const {
  return guarded(inside_->path.string(), "The book cannot be looked through",
                 [&]() -> Result<std::optional<std::string>> {
                   return store::look_through(*inside_->database);
                 });
}

bool Logbook::looked_through() const {
  return inside_->looked_through;
}
const std::optional<Error>& Logbook::read_only_reason() const {
  return inside_->read_only;
}
const std::optional<Damage>& Logbook::damage() const {
  return inside_->damage;
}

}  // namespace rb
