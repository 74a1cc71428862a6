#include "store/copies/mirror_keeper.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <mutex>
#include <set>
#include <utility>

#include "store/book/connection.h"
#include "store/book/row_reader.h"
#include "store/file/side_thread.h"
#include "store/photos/carry.h"
#include "store/photos/photo.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t kRowsCaughtUp = 200;
constexpr Seconds kRest{1.5};  // then the stick is looked for again
constexpr std::size_t kMostTold = 20;

bool same_disk(const fs::path& a, const fs::path& b) {
  struct stat of_a {};
  struct stat of_b {};
  return stat(a.c_str(), &of_a) == 0 && stat(b.c_str(), &of_b) == 0 && of_a.st_dev == of_b.st_dev;
}

}  // namespace

struct MirrorKeeper::Inside {
  const fs::path book;
  const Hooks hooks;

  mutable std::mutex mutex;
  MirrorStatus status;  // under the mutex

  std::mutex hooking;
  bool orphaned = false;  ///< under `hooking`: whoever asked for this is gone

  // The mirror's thread alone:
  std::optional<RowReader> rows;
  std::optional<Mirror> mirror;
  fs::path folder;                     ///< that `mirror` is in
  std::set<std::string> photos;        ///< known to be there
  std::optional<std::int64_t> synced;  ///< the last row known to be on the mirror's disk

  Inside(fs::path at, Hooks given) : book(std::move(at)), hooks(std::move(given)) {}

  [[nodiscard]] PlainDisk& disk() const { return hooks.disk ? *hooks.disk : plain_disk(); }

  std::optional<Seconds> turn() {
    for (bool again = true; again && !is_orphaned();) {
      const auto wanted = look();
      if (wanted != folder) {
        mirror.reset();
        photos.clear();
        folder = wanted;
        synced.reset();
      }
      if (folder.empty()) return std::nullopt;
      const auto done = follow();
      if (!done) {
        // What was not confirmed may be in memory only: it is written again from there on.
        mirror.reset();
        photos.clear();
        if (!synced && done.error().kind == MirrorTrouble::Kind::disk) synced = 0;
        tell_trouble(done.error());
        return kRest;
      }
      again = *done;
    }
    if (mirror && rows) bring_photos();
    return kRest;
  }

  /// Photos come after the rows, and give way to new ones.
  void bring_photos() {
    const std::string tag = rows->name().tag;
    const auto carried = carry_photos(photos_folder(book.parent_path(), tag),
                                      photos_folder(folder, tag), &photos, [this] {
                                        if (is_orphaned()) return false;
                                        const std::lock_guard lock(mutex);
                                        return status.kept <= synced;
                                      });
    const std::lock_guard lock(mutex);
    if (!carried) {
      photos.clear();
      tell("photos are not in the mirror: " + to_text(carried.error()));
      return;
    }
    for (const std::string& fault : carried->faults) tell(fault);
  }

  bool is_orphaned() {
    const std::lock_guard lock(hooking);
    return orphaned;
  }
  void call_changed() {
    const std::lock_guard lock(hooking);
    if (!orphaned && hooks.changed) hooks.changed();
  }

  fs::path look() {
    const std::lock_guard lock(mutex);
    return status.folder;
  }

  Mirrored<void> find_mirror() {
    const auto of_book = [](const Error& error) {
      return tl::unexpected(MirrorTrouble{MirrorTrouble::Kind::book, error});
    };
    if (!rows) {
      auto opened = RowReader::open(book);
      if (!opened) return of_book(opened.error());
      rows = std::move(*opened);
    }
    if (mirror) return {};
    auto opened = Mirror::open(disk(), folder, book.stem().string(), rows->name(),
                               [&](std::int64_t seq) { return rows->hash_at(seq); });
    if (!opened) return tl::unexpected(opened.error());
    mirror = std::move(*opened);
    // The first look at a mirror trusts what it reads there: opening synced it.
    synced = std::min(synced.value_or(mirror->last()), mirror->last());
    const auto last = rows->last();
    if (!last) return of_book(last.error());
    const std::lock_guard lock(mutex);
    status.file = mirror->file();
    status.kept = std::max(status.kept, *last);
    status.same_disk = same_disk(folder, book.parent_path());
    for (const auto& why : mirror->passed_over()) tell(why);
    return {};
  }

  /// Adds some rows; true when there may be more.
  Mirrored<bool> follow() {
    if (const auto found = find_mirror(); !found) return tl::unexpected(found.error());
    auto next = rows->after(*synced, kRowsCaughtUp);
    if (!next) {
      rows.reset();
      return tl::unexpected(MirrorTrouble{MirrorTrouble::Kind::book, next.error()});
    }
    if (next->empty() && !mirror->in_place()) {
      return tl::unexpected(mirror->gone());
    }
    const bool unsigned_last = *synced > 0 && !mirror->last_signed() && *synced == mirror->last();
    if (!next->empty() || unsigned_last) {
      const auto up_to = next->empty() ? *synced : next->back().row.seq;
      const auto heads = rows->heads(*synced + (unsigned_last ? 0 : 1), up_to);
      if (!heads) {
        rows.reset();
        return tl::unexpected(MirrorTrouble{MirrorTrouble::Kind::book, heads.error()});
      }
      std::vector<std::string> left_out;
      const auto bad = std::stable_partition(next->begin(), next->end(),
                                             [](const KeptRow& row) { return row.holds(); });
      for (auto row = bad; row != next->end(); ++row) {
        left_out.push_back(fmt::format("event {} is damaged in the book", row->row.seq));
      }
      next->erase(bad, next->end());
      if (const auto put = mirror->add(*next, *heads); !put) return tl::unexpected(put.error());
      synced = up_to;
      const std::lock_guard lock(mutex);
      for (auto& what : left_out) tell(std::move(what));
    }
    const auto beyond = rows->after(*synced, 1);
    const bool more = beyond && !beyond->empty();
    bool changed = false;
    {
      const std::lock_guard lock(mutex);
      changed = status.mirrored != synced || status.trouble;
      status.mirrored = synced;
      status.trouble.reset();
      status.kept = std::max(status.kept, *synced);
      if (more) {
        status.since = Moment{std::chrono::milliseconds{beyond->front().row.kept}};
      } else if (status.kept == *synced) {
        status.since.reset();
      }
    }
    if (changed) call_changed();
    return more;
  }

  void tell_trouble(const MirrorTrouble& trouble) {
    {
      const std::lock_guard lock(mutex);
      if (status.trouble == trouble) return;
      status.trouble = trouble;
      if (!status.since) status.since = hooks.now ? std::optional(hooks.now()) : std::nullopt;
    }
    call_changed();
  }

  /// Under the mutex.
  void tell(std::string what) {
    auto& told = status.told;
    if (told.size() < kMostTold && std::find(told.begin(), told.end(), what) == told.end()) {
      told.push_back(std::move(what));
    }
  }
};

MirrorKeeper::MirrorKeeper(fs::path book, fs::path folder, Hooks hooks)
    : inside_(std::make_shared<Inside>(settled(book), std::move(hooks))) {
  inside_->status.folder = std::move(folder);
  thread_ = std::make_unique<SideThread>(
      [inside = inside_](bool /*stopping*/) { return inside->turn(); });
}

MirrorKeeper::~MirrorKeeper() {
  thread_.reset();
  const std::lock_guard lock(inside_->hooking);
  inside_->orphaned = true;
}

void MirrorKeeper::note_kept(std::int64_t seq, Moment at) {
  {
    const std::lock_guard lock(inside_->mutex);
    auto& status = inside_->status;
    status.kept = std::max(status.kept, seq);
    if (!status.since && !status.folder.empty()) status.since = at;
  }
  thread_->wake();
}

void MirrorKeeper::look_again() {
  thread_->wake();
}

void MirrorKeeper::use(const fs::path& folder) {
  {
    const std::lock_guard lock(inside_->mutex);
    auto& status = inside_->status;
    if (status.folder == folder) return;
    const auto kept = status.kept;
    status = MirrorStatus{};
    status.folder = folder;
    status.kept = kept;
  }
  thread_->wake();
}

MirrorStatus MirrorKeeper::status() const {
  const std::lock_guard lock(inside_->mutex);
  return inside_->status;
}

}  // namespace rb::store
