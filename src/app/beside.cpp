#include "app/beside.h"

#include <utility>

#include "app/mirror_places.h"
#include "base/unfinished.h"
#include "store/file/entry_now.h"
#include "store/file/side_thread.h"

namespace rb {

namespace {

using Trouble = screens::MirrorSeen::Trouble;

Trouble trouble_of(const std::optional<store::MirrorTrouble>& trouble) {
  if (!trouble) return Trouble::none;
  switch (trouble->kind) {
    case store::MirrorTrouble::Kind::folder_gone:
      return Trouble::gone;
    case store::MirrorTrouble::Kind::full:
      return Trouble::full;
    case store::MirrorTrouble::Kind::forbidden:
      return Trouble::forbidden;
    case store::MirrorTrouble::Kind::disk:
      return Trouble::disk;
    case store::MirrorTrouble::Kind::book:
      return Trouble::book;
  }
  return Trouble::disk;
}

screens::CopySeen seen_of(const store::CopyJob* job, const std::string& refused) {
  using State = screens::CopySeen::State;
  if (!refused.empty()) return {State::failed, 0, refused};
  if (job == nullptr) return {};
  const auto status = job->status();
  if (!status.end) return {State::under_way, status.done, {}};
  if (!*status.end) return {State::failed, status.done, to_text(status.end->error())};
  std::string says = (*status.end)->file.filename().string();
  if (!(*status.end)->lacks.empty()) says += " (" + (*status.end)->lacks.front() + ")";
  return {State::made, 1, std::move(says)};
}

}  // namespace

/// Found on a thread of its own: a shared folder that hangs must not hold the drawing.
struct Beside::Places {
  std::mutex mutex;
  std::vector<screens::MirrorPlace> found;
};

void Beside::begin(const Path& book, const Path& mirror, Hooks hooks) {
  const std::lock_guard lock(mutex_);
  book_ = book;
  hooks_ = std::move(hooks);
  note_ = std::make_unique<store::NoteKeeper>(book, nullptr, hooks_.changed);
  store::MirrorKeeper::Hooks of_mirror;
  of_mirror.now = [] { return entry_now().wall; };
  of_mirror.changed = hooks_.changed;
  mirror_ = std::make_unique<store::MirrorKeeper>(book, mirror, std::move(of_mirror));
  told_ = 0;
}

void Beside::kept(const BookHead& head) {
  const std::lock_guard lock(mutex_);
  if (note_) note_->note_kept();
  if (mirror_) mirror_->note_kept(head.seq, entry_now().wall);
}

void Beside::act(const screens::Intent& wish) {
  const std::lock_guard lock(mutex_);
  if (!mirror_) return;
  if (const auto* use = std::get_if<screens::UseMirror>(&wish)) {
    mirror_->use(use->folder);
    told_ = 0;
    if (hooks_.chosen) hooks_.chosen(use->folder);
  } else if (std::holds_alternative<screens::CopyNow>(wish)) {
    copy();
  } else if (const auto* sheet = std::get_if<screens::WriteSheet>(&wish)) {
    paper_.reset();
    auto write = [sheet = *sheet, folders = paper_folders()]() -> Result<std::string> {
      const auto written = write_run_sheet(sheet, folders);
      if (!written) return Failed{written.error()};
      return written->string();
    };
    paper_ = std::make_unique<PaperJob>(std::move(write), sheet->voice, hooks_.changed);
  } else if (const auto* record = std::get_if<screens::MakeRecord>(&wish)) {
    this->record(*record);
  } else if (std::holds_alternative<screens::FindPlaces>(wish)) {
    if (finder_) return finder_->wake();
    places_ = std::make_shared<Places>();
    finder_ = std::make_unique<store::SideThread>(
        [places = places_, roots = hooks_.roots, book = book_,
         changed = hooks_.changed](bool stopping) -> std::optional<Seconds> {
          if (stopping) return std::nullopt;
          auto found = mirror_places(roots, book);
          bool other = false;
          {
            const std::lock_guard held(places->mutex);
            other = found != places->found;
            places->found = std::move(found);
          }
          if (other && changed) changed();
          return std::nullopt;
        });
  }
}

/// Under the mutex. Where paper goes, first the best: a mirror that is known to be away is not made
/// anew on the tablet's own disk.
std::vector<Path> Beside::paper_folders() const {
  const auto status = mirror_->status();
  std::vector<Path> folders;
  if (!status.folder.empty() && !status.trouble) folders.push_back(status.folder);
  folders.push_back(std::filesystem::absolute(book_).parent_path());
  return folders;
}

/// Under the mutex. A second tap while one is made makes no second one.
void Beside::record(const screens::MakeRecord& wish) {
  if (!hooks_.record) return;
  if (record_ && record_->seen().state == screens::CopySeen::State::under_way) return;
  record_.reset();
  const Path folder = wish.folder.empty() ? paper_folders().front() / "records" : Path{wish.folder};
  auto write = [make = hooks_.record, book = book_, wish, folder]() -> Result<std::string> {
    if (!make_folders(folder, 0755)) {
      return fail(Error::Kind::input, folder.string(), said("there is no such folder"),
                  said("Plug in the mirror's stick, or make room"));
    }
    return make(book, wish, folder);
  };
  record_ = std::make_unique<PaperJob>(std::move(write), wish.voice, hooks_.changed);
}

/// Under the mutex. A folder that is known not to be there is not made anew for a copy: it would
/// lie on the tablet's own disk under the stick's name.
void Beside::copy() {
  if (copy_ && !copy_->status().end) return;
  const auto status = mirror_->status();
  if (status.folder.empty()) return;
  copy_.reset();
  copy_refused_.clear();
  if (status.trouble && status.trouble->kind == store::MirrorTrouble::Kind::folder_gone) {
    copy_refused_ = to_text(status.trouble->error);
    return;
  }
  copy_ = std::make_unique<store::CopyJob>(book_, status.folder, hooks_.changed);
}

std::optional<screens::MirrorSeen> Beside::seen() const {
  const std::lock_guard lock(mutex_);
  if (!mirror_) return std::nullopt;
  const store::MirrorStatus status = mirror_->status();
  screens::MirrorSeen seen;
  seen.folder = status.folder.string();
  if (status.mirrored) seen.behind = status.behind();
  seen.since = status.since;
  seen.trouble = trouble_of(status.trouble);
  seen.same_disk = status.same_disk;
  seen.note_stuck = note_ && note_->status().trouble;
  if (places_) {
    const std::lock_guard held(places_->mutex);
    seen.places = places_->found;
  }
  seen.copy = seen_of(copy_.get(), copy_refused_);
  if (paper_) seen.paper = paper_->seen();
  if (record_) seen.record = record_->seen();
  return seen;
}

std::vector<std::string> Beside::take_told() {
  const std::lock_guard lock(mutex_);
  if (!mirror_) return {};
  std::vector<std::string> told = mirror_->status().told;
  told.erase(told.begin(),
             told.begin() + static_cast<std::ptrdiff_t>(std::min(told_, told.size())));
  told_ += told.size();
  return told;
}

void Beside::end() {
  std::unique_ptr<store::NoteKeeper> note;
  std::unique_ptr<store::MirrorKeeper> mirror;
  std::unique_ptr<store::CopyJob> copy;
  std::unique_ptr<store::SideThread> finder;
  {
    const std::lock_guard lock(mutex_);
    note = std::move(note_);
    mirror = std::move(mirror_);
    copy = std::move(copy_);
    finder = std::move(finder_);
  }
}

}  // namespace rb
