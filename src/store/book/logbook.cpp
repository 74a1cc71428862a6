#include "store/book/logbook.h"

#include <fmt/format.h>
#include <sqlite3.h>

#include <unordered_map>
#include <utility>

#include "base/unfinished.h"
#include "store/book/connection.h"
#include "store/book/logbook_inside.h"
#include "store/file/file_bytes.h"
#include "store/file/file_header.h"
#include "store/file/migrations.h"
#include "store/file/trouble.h"
#include "store/salvage/lost_in_log.h"
#include "store/salvage/salvage.h"
#include "store/salvage/salvaged_book.h"

namespace rb {

namespace fs = std::filesystem;
using store::guarded;

namespace {

constexpr const char* kEvents = "SELECT {} FROM events WHERE pour = ? ORDER BY seq";
constexpr const char* kOneEvent = "SELECT {} FROM events WHERE seq = ?";

}  // namespace

Logbook::Inside::Inside(fs::path at, store::Opened opened, store::WriterLock held)
    : path(std::move(at)),
      access(opened.access),
      lock(std::move(held)),
      database(std::move(opened.database)),
      name(store::name_of(*database)),
      events(*database, fmt::format(fmt::runtime(kEvents), store::kRowColumns)),
      one_event(*database, fmt::format(fmt::runtime(kOneEvent), store::kRowColumns)),
      read_only(std::move(opened.read_only)),
      looked_through(opened.looked_through),
      older_faults(std::move(opened.older_faults)) {
  looked_at_order = opened.looked_at_order;
  if (access == Access::write) keeping.emplace(*database);
}

/// The log is brought in as far as readers let it, waiting for none.
Logbook::Inside::~Inside() {
  if (access == Access::write) {
    sqlite3_wal_checkpoint_v2(database->getHandle(), nullptr, SQLITE_CHECKPOINT_PASSIVE, nullptr,
                              nullptr);
  }
}

namespace {

/// How many acknowledged events the log holds that SQLite would pass over, and cut off in writing.
std::size_t lost_in_log_of(const fs::path& path) {
  const auto count = guarded(path.string(), {}, [&]() -> Result<std::size_t> {
    const auto log = store::file_bytes(store::log_of(path));  // before the head is asked for
    if (log.empty()) return 0;
    const auto seen = store::open_connection(path, Access::read);
    if (!seen || !seen->database || seen->damaged) return 0;  // told by what comes next
    return store::lost_in_log(store::Bytes{log}, store::head_of(*seen->database));
  });
  return count.value_or(0);  // what could not be read is told by what comes next
}

/// Whether a file that does not begin as a book of ours may be one all the same.
bool may_be_a_book(const fs::path& path) {
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 30U;
  std::error_code error;
  if (!fs::is_regular_file(path, error) || fs::file_size(path, error) > kMostBytes || error) {
    return false;
  }
  const auto same = guarded(path.string(), {}, [&]() -> Result<bool> {
    const auto header = store::read_header(path);
    if (!header || header->application_id != store::kApplicationId) return true;
    // A newer book has a newer schema; ours under another number is a number gone wrong.
    const SQLite::Database database(path.string(), SQLite::OPEN_READONLY);
    return store::schema_faults(database, store::schema_version()).empty();
  });
  return same.value_or(false);
}

}  // namespace

Result<std::unique_ptr<Logbook::Inside>> Logbook::Inside::open(const fs::path& path, Access access,
                                                               store::WriterLock lock) {
  const auto lost = lost_in_log_of(path);
  if (lost > 0) {  // not even opened for writing: that would cut the log
    return open_damaged(
        path, access,
        {Error::Kind::book, path.string(),
         fmt::format("the book is damaged: {} events in the log beside it lie behind the damage",
                     lost),
         "Save them with risebook rescue"});
  }
  auto opened = store::open_connection(path, access);
  if (!opened) return Failed{opened.error()};
  if (opened->damaged) {
    const auto why = *opened->read_only;
    if (auto whole = open_damaged(path, access, why)) return whole;
    opened = store::open_connection(path, Access::read);  // nothing whole found: as it stands
    if (!opened) return Failed{opened.error()};
    if (opened->damaged) return Failed{why};
    if (access == Access::write) opened->read_only = why;
  }
  if (opened->access == Access::read) lock = store::WriterLock{};  // others may write
  auto inside =
      guarded(path.string(), "the book cannot be read", [&]() -> Result<std::unique_ptr<Inside>> {
        return std::make_unique<Inside>(path, std::move(*opened), std::move(lock));
      });
  if (inside) return inside;
  // Its schema or its own row is damaged: SQLite finds out at the first question.
  auto whole = open_damaged(path, access, inside.error());
  return whole ? std::move(whole) : std::move(inside);
}

Result<std::unique_ptr<Logbook::Inside>> Logbook::Inside::open_damaged(const fs::path& path,
                                                                       Access access,
                                                                       const Error& why) {
  return guarded(
      path.string(), "the book cannot be read", [&]() -> Result<std::unique_ptr<Inside>> {
        const auto salvaged = store::salvage(path);
        if (!salvaged) return Failed{salvaged.error()};
        if (salvaged->rows.empty() && !salvaged->name) return Failed{why};
        store::Opened opened{.database = store::book_in_memory(*salvaged)};
        if (access == Access::write) opened.read_only = why;
        auto inside = std::make_unique<Inside>(path, std::move(opened), store::WriterLock{});
        inside->damage = Damage{.why = why.what.text(),
                                .events = salvaged->damaged,
                                .whole = salvaged->rows.size(),
                                .last = salvaged->last,
                                .name_lost = !salvaged->name};
        return inside;
      });
}

template <class Work>
auto Logbook::Inside::whole(const std::string& doing, Work&& work) -> decltype(work()) {
  using Answer = decltype(work());
  if (access != Access::write) {
    return fail(BookTrouble::read_only, path.string(),
                doing + ": the book is open for reading only" +
                    (read_only ? "; " + read_only->what.text() : std::string{}),
                read_only ? read_only->remedy : Saying{"Open it for writing"});
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
    answer.error().remedy =
        followed(answer.error().remedy,
                 said("Should the tablet stop before that, look whether the event is in the book "
                      "before you enter it again"));
  }
  return answer;
}

Result<Event> Logbook::Inside::keep(const PourId& pour, Event event, const Entry& entry,
                                    Moment kept, const store::Resolve& resolve, store::Head& head) {
  if (auto done = store::point_targets(event.what, resolve, *database); !done) {
    return Failed{done.error()};
  }
  const bool sign = signer && store::calls_for_signing(event.what);
  auto done = keeping->keep(pour, std::move(event), entry, kept, name.tag, head);
  if (done && sign) signer->sign(head, kept);
  return done;
}

Logbook::Logbook(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Logbook::Logbook(Logbook&&) noexcept = default;
Logbook& Logbook::operator=(Logbook&&) noexcept = default;
Logbook::~Logbook() = default;

Result<Logbook> Logbook::create(const fs::path& path) {
  const auto at = store::settled(path);
  (void)make_folders(at.parent_path(), 0700);  // one that could not be made shows in the next step
  auto lock = store::WriterLock::take(at);
  if (!lock) return Failed{lock.error()};
  if (auto made = store::make_book(at); !made) return Failed{made.error()};
  auto inside = Inside::open(at, Access::write, std::move(*lock));
  if (!inside) return Failed{inside.error()};
  return Logbook(std::move(*inside));
}

Result<Logbook> Logbook::open(const fs::path& path, Access access) {
  const auto at = store::settled(path);
  if (auto book = store::probe(at); !book) {
    if (!may_be_a_book(at)) return Failed{book.error()};
    auto whole = Inside::open_damaged(
        at, access,
        {Error::Kind::book, at.string(), "the book is damaged: its beginning is not a book's",
         "Save what is whole of it with risebook rescue"});
    if (!whole) return Failed{book.error()};
    return Logbook(std::move(*whole));
  }
  store::WriterLock held;
  if (access == Access::write) {
    if (auto one = store::one_name(at); !one) return Failed{one.error()};
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
        error.where = inside(fmt::format("script, event {}", kept.size() + 1), error.where);
        return Failed{std::move(error)};
      }
      if (!line.id.empty()) ids.emplace(line.id, event->id);
      kept.push_back(std::move(*event));
    }
    return kept;
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

bool Logbook::empty_log() {
  return writable() && store::empty_log(*inside_->database);
}

Result<void> Logbook::sign_with(const store::DeviceKey& key) {
  auto& in = *inside_;
  return guarded(in.path.string(), "heads cannot be signed", [&]() -> Result<void> {
    if (writable()) in.signer.emplace(*in.database, key, in.name.uuid);
    return {};
  });
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
