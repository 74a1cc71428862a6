#include "store/logbook.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <unordered_map>
#include <utility>

#include "store/connection.h"
#include "store/keeping.h"
#include "store/targets.h"
#include "store/trouble.h"
#include "store/verify.h"
#include "store/writer_lock.h"

namespace rb {

namespace fs = std::filesystem;
using store::guarded;

/// Members go in the reverse order: statements before the connection, the lock last.
struct Logbook::Inside {
  fs::path path;
  Access access;
  store::WriterLock lock;
  std::unique_ptr<SQLite::Database> database;
  store::BookName name;
  std::optional<store::Keeping> keeping;  ///< for writing only
  SQLite::Statement events, pours, one_event;

  Inside(fs::path at, Access how, store::WriterLock held, std::unique_ptr<SQLite::Database> opened);

  static Result<std::unique_ptr<Inside>> open(const fs::path& path, Access access,
                                              store::WriterLock lock);

  /// Runs `work` as one transaction: all of what it keeps is on the disk when its Result comes
  /// back, or nothing of it.
  template <class Work>
  auto whole(const std::string& doing, Work&& work) -> decltype(work());

  Result<Event> keep(const PourId& pour, Event event, const Entry& entry, Moment kept,
                     const store::Resolve& resolve, store::Head& head);
  Result<Event> keep_tap(const Tapped& tap, store::Head& at);
};

namespace {

constexpr const char* kEvents = "SELECT {} FROM events WHERE pour = ? ORDER BY seq";
constexpr const char* kOneEvent = "SELECT {} FROM events WHERE seq = ?";
constexpr const char* kPours = R"(
  WITH told AS (
    SELECT seq, pour, id, line ->> '$.at' AS at, line ->> '$.do' AS kind, line ->> '$.target' AS target
    FROM events WHERE json_valid(line))
  SELECT pour, min(at), max(at), count(*),
    max(kind = 'pour-close'
        AND NOT EXISTS (SELECT 1 FROM told strike WHERE strike.kind = 'strike' AND strike.target = told.id))
  FROM told GROUP BY pour ORDER BY min(seq))";

}  // namespace

Logbook::Inside::Inside(fs::path at, Access how, store::WriterLock held,
                        std::unique_ptr<SQLite::Database> opened)
    : path(std::move(at)),
      access(how),
      lock(std::move(held)),
      database(std::move(opened)),
      name(store::name_of(*database)),
      events(*database, fmt::format(fmt::runtime(kEvents), store::kRowColumns)),
      pours(*database, kPours),
      one_event(*database, fmt::format(fmt::runtime(kOneEvent), store::kRowColumns)) {
  if (access == Access::write) keeping.emplace(*database);
}

Result<std::unique_ptr<Logbook::Inside>> Logbook::Inside::open(const fs::path& path, Access access,
                                                               store::WriterLock lock) {
  auto database = store::connect(path, access);
  if (!database) return Failed{database.error()};
  return guarded(
      path.string(), "the book cannot be read", [&]() -> Result<std::unique_ptr<Inside>> {
        return std::make_unique<Inside>(path, access, std::move(lock), std::move(*database));
      });
}

template <class Work>
auto Logbook::Inside::whole(const std::string& doing, Work&& work) -> decltype(work()) {
  using Answer = decltype(work());
  if (access != Access::write) {
    return fail(Error::Kind::book, path.string(), doing + ": the book is open for reading only",
                "Open it for writing");
  }
  bool uncertain = false;
  auto answer = guarded(path.string(), doing, [&]() -> Answer {
    SQLite::Transaction transaction(*database, SQLite::TransactionBehavior::IMMEDIATE);
    auto done = work();
    if (!done) return done;  // rolls back
    try {
      transaction.commit();
    } catch (const SQLite::Exception& thrown) {
      uncertain = thrown.getErrorCode() != SQLITE_FULL;  // full: its end was never written
      throw;
    }
    return done;
  });
  // A commit whose last sync failed lies in the log, whole but not acknowledged, and would come
  // back after a crash. Emptying the log makes "not kept" true; else the next append writes over
  // it.
  if (uncertain && !store::empty_log(*database)) {
    answer.error().remedy +=
        ". Should the tablet stop before that, look whether the event is in the book before you "
        "enter it again";
  }
  return answer;
}

Result<Event> Logbook::Inside::keep(const PourId& pour, Event event, const Entry& entry,
                                    Moment kept, const store::Resolve& resolve, store::Head& head) {
  if (auto done = store::point_targets(event.what, resolve, *database); !done) {
    return Failed{done.error()};
  }
  return keeping->keep(pour, std::move(event), entry, kept, name.tag, head);
}

Logbook::Logbook(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Logbook::Logbook(Logbook&&) noexcept = default;
Logbook& Logbook::operator=(Logbook&&) noexcept = default;
Logbook::~Logbook() = default;

Result<Logbook> Logbook::create(const fs::path& path) {
  const auto at = store::settled(path);
  std::error_code ignored;  // a folder that could not be made shows in the next step
  fs::create_directories(at.parent_path(), ignored);
  auto lock = store::WriterLock::take(at);
  if (!lock) return Failed{lock.error()};
  if (auto made = store::make_book(at); !made) return Failed{made.error()};
  auto inside = Inside::open(at, Access::write, std::move(*lock));
  if (!inside) return Failed{inside.error()};
  return Logbook(std::move(*inside));
}

Result<Logbook> Logbook::open(const fs::path& path, Access access) {
  const auto at = store::settled(path);
  if (auto book = store::probe(at); !book) return Failed{book.error()};
  store::WriterLock held;
  if (access == Access::write) {
    auto lock = store::WriterLock::take(at);
    if (!lock) return Failed{lock.error()};
    held = std::move(*lock);
  }
  auto inside = Inside::open(at, access, std::move(held));
  if (!inside) return Failed{inside.error()};
  return Logbook(std::move(*inside));
}

Result<Logbook> Logbook::open_or_create(const fs::path& path) {
  std::error_code ignored;
  return fs::exists(store::settled(path), ignored) ? open(path, Access::write) : create(path);
}

Result<Event> Logbook::Inside::keep_tap(const Tapped& tap, store::Head& at) {
  const auto* const open = std::get_if<event::PourOpen>(&tap.event.what);
  const bool known = keeping->has_pour(tap.pour);
  if (open && (known || open->pour != tap.pour || tap.pour.empty())) {
    return fail(
        Error::Kind::input, "pour-open",
        known ? fmt::format("pour {} is already in the book", tap.pour.text)
              : fmt::format("the pour is named {}, its event {}", tap.pour.text, open->pour.text),
        "Give the pour a name of its own");
  }
  if (!open && !known) {
    return fail(Error::Kind::input, kind_text(tap.event.what),
                fmt::format("pour {} is not in the book", tap.pour.text), "Open the pour first");
  }
  const auto resolve = [&](const EventId& id) {
    return keeping->has_event(tap.pour, id) ? std::optional(id) : std::nullopt;
  };
  return keep(tap.pour, tap.event, tap.entry, tap.kept, resolve, at);
}

Result<Event> Logbook::append(const PourId& pour, Event event, const Entry& entry) {
  auto& in = *inside_;
  return in.whole("the tap was NOT kept", [&]() -> Result<Event> {
    auto head = in.keeping->head();
    return in.keep_tap({pour, std::move(event), entry, entry.wall}, head);
  });
}

Result<std::vector<Event>> Logbook::append_all(const std::vector<Tapped>& taps) {
  auto& in = *inside_;
  return in.whole("the taps were NOT kept", [&]() -> Result<std::vector<Event>> {
    auto head = in.keeping->head();
    std::vector<Event> kept;
    kept.reserve(taps.size());
    for (const Tapped& tap : taps) {
      auto one = in.keep_tap(tap, head);
      if (!one) return Failed{one.error()};
      kept.push_back(std::move(*one));
    }
    return kept;
  });
}

Result<std::vector<Event>> Logbook::append_script(const Script& script, const Entry& entry) {
  auto& in = *inside_;
  using Events = std::vector<Event>;
  return in.whole("nothing of the script was kept", [&]() -> Result<Events> {
    if (in.keeping->has_pour(script.pour)) {
      return fail(Error::Kind::input, "script",
                  fmt::format("pour {} is already in the book; nothing was kept", script.pour.text),
                  "Replay the script into another book, or give its pour another name");
    }
    std::unordered_map<EventId, EventId> ids;
    const auto resolve = [&](const EventId& id) {
      const auto found = ids.find(id);
      return found == ids.end() ? std::nullopt : std::optional(found->second);
    };
    auto head = in.keeping->head();
    Events kept;
    kept.reserve(script.events.size());
    for (const auto& line : script.events) {
      const auto* const open = std::get_if<event::PourOpen>(&line.what);
      if ((open != nullptr) != kept.empty() || (open && open->pour != script.pour)) {
        return fail(Error::Kind::input, fmt::format("script, event {}", kept.size() + 1),
                    "a script opens its own pour, first and once", "Check the script");
      }
      auto event =
          in.keep(script.pour, line, line.entry.value_or(entry), entry.wall, resolve, head);
      if (!event) {
        auto error = event.error();
        error.where = fmt::format("script, event {}, {}", kept.size() + 1, error.where);
        return Failed{std::move(error)};
      }
      if (!line.id.empty()) ids.emplace(line.id, event->id);
      kept.push_back(std::move(*event));
    }
    return kept;
  });
}

Result<std::vector<Event>> Logbook::events(const PourId& pour) const {
  const auto where = inside_->path.string();
  return guarded(where, "the pour cannot be read", [&]() -> Result<std::vector<Event>> {
    store::Use use(inside_->events);
    use->bind(1, pour.text);
    std::vector<Event> events;
    while (use->executeStep()) {
      auto event = store::event_of(store::row_of(inside_->events), where);
      if (!event) return Failed{event.error()};
      events.push_back(std::move(*event));
    }
    return events;
  });
}

Result<std::vector<PourSummary>> Logbook::pours() const {
  const auto where = inside_->path.string();
  return guarded(where, "the pours cannot be read", [&]() -> Result<std::vector<PourSummary>> {
    store::Use use(inside_->pours);
    std::vector<PourSummary> pours;
    while (use->executeStep()) {
      pours.push_back({.pour = PourId{use->getColumn(0).getString()},
                       .first = parse_moment(use->getColumn(1).getString()).value_or(Moment{}),
                       .last = parse_moment(use->getColumn(2).getString()).value_or(Moment{}),
                       .count = static_cast<std::size_t>(use->getColumn(3).getInt64()),
                       .closed = use->getColumn(4).getInt() != 0});
    }
    return pours;
  });
}

Result<std::string> Logbook::head_hash() const {
  return guarded(inside_->path.string(), "the book cannot be read", [&]() -> Result<std::string> {
    return store::to_hex(store::head_of(*inside_->database).hash);
  });
}

Result<BookHead> Logbook::head() const {
  return guarded(inside_->path.string(), "the book cannot be read", [&]() -> Result<BookHead> {
    const auto head = store::head_of(*inside_->database);
    return BookHead{head.seq, store::to_hex(head.hash)};
  });
}

Result<Event> Logbook::event(std::int64_t seq) const {
  const auto where = inside_->path.string();
  return guarded(where, "the event cannot be read", [&]() -> Result<Event> {
    store::Use use(inside_->one_event);
    use->bind(1, seq);
    if (use->executeStep()) return store::event_of(store::row_of(inside_->one_event), where);
    return fail(Error::Kind::book, where, fmt::format("there is no event {} in the book", seq));
  });
}

void Logbook::keep_log() {
  sqlite3_wal_autocheckpoint(inside_->database->getHandle(), 0);
}

bool Logbook::empty_log() {
  return writable() && store::empty_log(*inside_->database);
}

Result<VerifyReport> Logbook::verify() const {
  VerifyReport report;
  const auto read =
      guarded(inside_->path.string(), "The book cannot be read through", [&]() -> Result<void> {
        store::verify(*inside_->database, report);
        return {};
      });
  if (!read) report.faults.push_back(to_text(read.error()));
  return report;
}

const std::string& Logbook::tag() const {
  return inside_->name.tag;
}
const std::string& Logbook::uuid() const {
  return inside_->name.uuid;
}
Moment Logbook::created() const {
  return Moment{std::chrono::milliseconds{inside_->name.created}};
}
const fs::path& Logbook::file() const {
  return inside_->path;
}
bool Logbook::writable() const {
  return inside_->access == Access::write;
}

}  // namespace rb
