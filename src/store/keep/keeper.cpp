#include "store/keep/keeper.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <utility>

#include "pour/log/event_json.h"
#include "store/book/renumber.h"
#include "store/file/identity.h"
#include "store/file/in_place.h"

namespace rb {

namespace {

using Steady = std::chrono::steady_clock;

// Taps kept with one wait for the disk; what a slow disk lets come together goes down together.
constexpr std::size_t kTogether = 64;

Steady::duration span_of(Seconds span) {
  return std::chrono::duration_cast<Steady::duration>(span);
}

enum class Outcome { kept, refused, trouble, moved };
struct Attempt {
  Outcome outcome = Outcome::kept;
  std::size_t count = 0;  ///< of the first that wait: kept, or refused (one)
  BookHead head{};
  Error why{};
};

}  // namespace

struct Keeper::Inside {
  struct Waiting {
    std::int64_t seq = 0;
    Tapped tap;
    Steady::time_point asked;
  };

  Logbook book;
  const Hooks hooks;
  const Pace pace;
  const std::string tag, uuid;
  const std::filesystem::path path;
  const std::optional<store::FileMark> mark;
  std::optional<store::FileMark> log_mark;  ///< of the log; the writer's own, as is what follows
  bool log_lost = false;

  mutable std::mutex mutex;
  std::condition_variable work, settled;
  // Under the mutex:
  std::deque<Waiting> queue;
  std::int64_t next = 1;
  KeeperStatus status;
  std::vector<RefusedTap> refused;
  bool stop = false;
  bool log_open = true;  ///< the log may hold what the file does not

  std::thread thread;

  Inside(Logbook taken, std::int64_t head, Hooks given, Pace paced)
      : book(std::move(taken)),
        hooks(std::move(given)),
        pace(paced),
        tag(book.tag()),
        uuid(book.uuid()),
        path(book.file()),
        mark(store::mark_of(path)),
        next(head + 1) {
    status.kept = head;
  }

  [[nodiscard]] std::filesystem::path log_path() const { return path.string() + "-wal"; }

  [[nodiscard]] Error no_answer() const {
    return {Error::Kind::book, path.string(), "the disk could not be read or written",
            "It is tried again", BookTrouble::no_answer};
  }

  void run();
  Attempt attempt(const std::vector<Waiting>& batch, bool again);
  std::optional<Attempt> found_in_book(const std::vector<Waiting>& batch);
  [[nodiscard]] std::optional<Error> out_of_place();
  void take_in(const Attempt& done, std::vector<Waiting>& batch);
  void rest(std::unique_lock<std::mutex>& lock, Steady::time_point last_tap);
  void bring_in_log();
  bool note_place(const std::optional<Error>& gone);
};

// The book must stand where it is looked for, or "kept" would be true of a file nobody finds.
std::optional<Error> Keeper::Inside::out_of_place() {
  const auto found = store::mark_of(path);
  if (!mark || found == mark) {
    const auto log = store::mark_of(log_path());
    if (!log_mark) log_mark = log;
    // A log deleted under the program is still open, but nobody finds it any more: from now on
    // nothing is kept before it is in the file itself.
    log_lost = log != log_mark;
    return {};
  }
  (void)book.empty_log();  // so that it is whole wherever it is now
  return Error{Error::Kind::book, path.string(),
               found ? "another file stands where the book was" : "the book was moved or deleted",
               "Put the book back where it was",
               found ? BookTrouble::in_the_way : BookTrouble::not_there};
}

// A try whose answer was lost may have kept some: they are not kept twice. What was found counts
// as kept when it is on the disk for certain.
std::optional<Attempt> Keeper::Inside::found_in_book(const std::vector<Waiting>& batch) {
  const auto head = book.head();
  if (!head) return Attempt{Outcome::trouble, 0, {}, head.error()};
  std::size_t count = 0;
  while (count < batch.size() && batch[count].seq <= head->seq) ++count;
  if (count == 0) return {};
  for (std::size_t i = 0; i < count; ++i) {
    const auto there = book.event(batch[i].seq);
    if (!there) return Attempt{Outcome::trouble, 0, {}, there.error()};
    if (*there != batch[i].tap.event) {
      return Attempt{Outcome::trouble,
                     0,
                     {},
                     Error{Error::Kind::book, path.string(), "another program wrote to the book",
                           "Close it and start Risebook again"}};
    }
  }
  if (!book.empty_log()) {
    return Attempt{Outcome::trouble, 0, {}, no_answer()};
  }
  return Attempt{Outcome::kept, count, *head, {}};
}

Attempt Keeper::Inside::attempt(const std::vector<Waiting>& batch, bool again) {
  if (auto gone = out_of_place()) return {Outcome::moved, 0, {}, std::move(*gone)};
  if (again) {
    if (auto found = found_in_book(batch)) return std::move(*found);
  }
  std::vector<Tapped> taps;
  taps.reserve(batch.size());
  for (const Waiting& one : batch) {
    taps.push_back(one.tap);
    // When the book takes it in, told by the clock of its entry.
    taps.back().kept = after(one.tap.entry.wall, Seconds{Steady::now() - one.asked});
  }
  const auto kept = book.append_all(taps);
  if (!kept) {
    const bool content = kept.error().kind != Error::Kind::book;
    return {content ? Outcome::refused : Outcome::trouble, content ? 1U : 0U, {}, kept.error()};
  }
  if (auto gone = out_of_place()) return {Outcome::moved, 0, {}, std::move(*gone)};
  if (log_lost && !book.empty_log()) return {Outcome::trouble, 0, {}, no_answer()};
  Attempt done{Outcome::kept, batch.size(), {batch.back().seq, {}}, {}};
  if (hooks.on_kept) {
    if (const auto head = book.head()) done.head = *head;
  }
  return done;
}

void Keeper::Inside::bring_in_log() {
  const bool done = book.empty_log();
  const std::lock_guard lock(mutex);
  if (done) log_open = false;
  settled.notify_all();
}

// True when that is news.
bool Keeper::Inside::note_place(const std::optional<Error>& gone) {
  const bool was = status.state == KeepState::moved_away;
  if (gone.has_value() == was) return false;
  status.state = gone ? KeepState::moved_away : KeepState::kept;
  status.why = gone;
  return true;
}

// Nothing waits: the log is brought in once the taps have rested, and the file is looked for.
void Keeper::Inside::rest(std::unique_lock<std::mutex>& lock, Steady::time_point last_tap) {
  const auto due = last_tap + span_of(pace.rest);
  const auto now = Steady::now();
  const auto something = [&] { return stop || !queue.empty(); };
  if (log_open && now < due) {
    work.wait_until(lock, due, something);
    return;
  }
  lock.unlock();
  if (log_open) bring_in_log();
  const auto gone = out_of_place();
  lock.lock();
  if (something()) return;
  if (note_place(gone) && hooks.wake) {
    lock.unlock();
    hooks.wake();
    lock.lock();
  }
  work.wait_for(lock, log_open ? span_of(Seconds{0.25}) : span_of(pace.look), something);
}

void Keeper::Inside::take_in(const Attempt& done, std::vector<Waiting>& batch) {
  if (done.outcome == Outcome::kept) {
    queue.erase(queue.begin(), queue.begin() + static_cast<std::ptrdiff_t>(done.count));
    status.kept = batch[done.count - 1].seq;
    status.state = queue.empty() ? KeepState::kept : KeepState::keeping;
    status.why.reset();
    log_open = true;
    return;
  }
  if (done.outcome == Outcome::refused) {
    refused.push_back({queue.front().tap, done.why});
    // Those behind move up by one, and what they say of each other with them.
    store::Renumber moved;
    moved.gone(queue.front().tap.event.id);
    queue.pop_front();
    --next;
    for (Waiting& one : queue) {
      --one.seq;
      moved.move(one.tap.event, store::event_id(tag, one.seq));
    }
    ++status.renumbered;
    status.state = queue.empty() ? KeepState::kept : KeepState::keeping;
    return;
  }
  status.state = done.outcome == Outcome::moved ? KeepState::moved_away : KeepState::waiting;
  status.why = done.why;
}

void Keeper::Inside::run() {
  auto last_tap = Steady::now();
  Seconds patience = pace.first_retry;
  bool again = false;  // the last try failed: it may have kept something all the same
  std::size_t together = kTogether;
  std::unique_lock lock(mutex);
  for (;;) {
    if (queue.empty()) {
      if (stop) return;
      rest(lock, last_tap);
      continue;
    }
    std::vector<Waiting> batch(queue.begin(), queue.begin() + static_cast<std::ptrdiff_t>(std::min(
                                                                  queue.size(), together)));
    lock.unlock();
    Attempt done = attempt(batch, again);
    if (done.outcome == Outcome::kept && hooks.on_kept) hooks.on_kept(done.head);
    lock.lock();
    const bool failed = done.outcome == Outcome::trouble || done.outcome == Outcome::moved;
    // One of several was refused: which one shows when they go one by one.
    const bool split = done.outcome == Outcome::refused && batch.size() > 1;
    if (!split) take_in(done, batch);
    together = split ? 1 : (done.outcome == Outcome::kept ? kTogether : together);
    again = failed;
    last_tap = Steady::now();
    settled.notify_all();
    lock.unlock();
    if (hooks.wake && !split) hooks.wake();
    std::error_code ignored;
    const auto log = std::filesystem::file_size(log_path(), ignored);
    if (!failed && !ignored && log > pace.log) bring_in_log();
    lock.lock();
    if (!failed) {
      patience = pace.first_retry;
      continue;
    }
    if (stop) return;
    work.wait_for(lock, span_of(patience), [&] { return stop; });
    patience = std::min(patience * 2, pace.longest_retry);
  }
}

Keeper::Keeper(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {
  inside_->thread = std::thread([in = inside_.get()] { in->run(); });
}

Result<std::unique_ptr<Keeper>> Keeper::start(Logbook book, Hooks hooks, Pace pace) {
  const auto head = book.head();
  if (!head) return Failed{head.error()};
  return std::unique_ptr<Keeper>(
      new Keeper(std::make_unique<Inside>(std::move(book), head->seq, std::move(hooks), pace)));
}

Keeper::~Keeper() {
  {
    const std::lock_guard lock(inside_->mutex);
    inside_->stop = true;
  }
  inside_->work.notify_all();
  inside_->thread.join();
}

Result<Event> Keeper::keep(const PourId& pour, Event event, const Entry& entry,
                           std::optional<int> seen) {
  Inside& in = *inside_;
  event.id = EventId{};
  event.entry.reset();
  if (!std::isfinite(entry.steady.count())) {
    return fail(Error::Kind::input, "entry", "the steady clock's reading is not a number");
  }
  auto standing = parse_event(to_line(event), kind_text(event.what));
  if (!standing) return standing;
  standing->entry = Entry{entry.wall, Seconds{entry.steady.count() + 0.0}, entry.boot};
  {
    const std::lock_guard lock(in.mutex);
    if (seen && *seen != in.status.renumbered && store::speaks_of_another(*standing)) {
      return fail(Error::Kind::refused, kind_text(standing->what),
                  "entries have moved up since the one it is about was shown",
                  "Look for that entry again and tap once more");
    }
    const std::int64_t seq = in.next++;
    standing->id = store::event_id(in.tag, seq);
    in.queue.push_back({seq, {pour, *standing, entry, entry.wall}, Steady::now()});
    if (in.status.state == KeepState::kept) in.status.state = KeepState::keeping;
  }
  in.work.notify_all();
  return standing;
}

KeeperStatus Keeper::status() const {
  const std::lock_guard lock(inside_->mutex);
  KeeperStatus now = inside_->status;
  now.waiting = inside_->queue.size();
  if (now.waiting > 0) now.oldest = inside_->queue.front().tap.entry.wall;
  return now;
}

std::vector<Tapped> Keeper::waiting() const {
  const std::lock_guard lock(inside_->mutex);
  std::vector<Tapped> all;
  for (const Inside::Waiting& one : inside_->queue) all.push_back(one.tap);
  return all;
}

std::size_t Keeper::waiting_of(const PourId& pour) const {
  const std::lock_guard lock(inside_->mutex);
  return static_cast<std::size_t>(
      std::count_if(inside_->queue.begin(), inside_->queue.end(),
                    [&](const Inside::Waiting& one) { return one.tap.pour == pour; }));
}

std::vector<RefusedTap> Keeper::take_refused() {
  const std::lock_guard lock(inside_->mutex);
  return std::exchange(inside_->refused, {});
}

bool Keeper::settle(Seconds at_most) {
  std::unique_lock lock(inside_->mutex);
  return inside_->settled.wait_for(lock, span_of(at_most), [&] { return inside_->queue.empty(); });
}

bool Keeper::settle_file(Seconds at_most) {
  std::unique_lock lock(inside_->mutex);
  return inside_->settled.wait_for(lock, span_of(at_most),
                                   [&] { return inside_->queue.empty() && !inside_->log_open; });
}

const std::string& Keeper::tag() const {
  return inside_->tag;
}
const std::string& Keeper::uuid() const {
  return inside_->uuid;
}
const std::filesystem::path& Keeper::file() const {
  return inside_->path;
}

}  // namespace rb
