#include "store/book/head_note.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <sstream>

#include "store/file/identity.h"
#include "store/file/row_text.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t kApart = 4096;  // no disk of today writes more than this as one
constexpr std::size_t kLine = 256;
constexpr int kMostKept = 99;
constexpr std::string_view kMark = "risebook head 1";

std::string checked(const HeadNote& note) {
  return fmt::format("{} {} {} {}", kMark, note.uuid, note.seq, to_hex(note.hash));
}

std::string slot_text(const HeadNote& note) {
  const auto text = checked(note);
  auto line = fmt::format("{} {}", text, to_hex(hash_of_text(text)));
  line.resize(kLine - 1, ' ');
  return line + '\n';
}

std::optional<HeadNote> read_slot(std::string_view slot) {
  if (slot.size() != kLine) return std::nullopt;
  std::istringstream words{std::string(slot)};
  std::string mark, kind, version, seq, hash, check;
  HeadNote note;
  if (!(words >> mark >> kind >> version >> note.uuid >> seq >> hash >> check)) return std::nullopt;
  const auto [end, wrong] = std::from_chars(seq.data(), seq.data() + seq.size(), note.seq);
  const auto read = read_hash(hash);
  if (wrong != std::errc{} || end != seq.data() + seq.size() || !read) return std::nullopt;
  note.hash = *read;
  // The whole line as it would be written, so that no byte of it can differ unseen.
  return slot_text(note) == slot ? std::optional(note) : std::nullopt;
}

struct Slots {
  std::optional<HeadNote> one[2];
  bool written[2] = {};  ///< something stands there
};

Done<Slots> read_slots(PlainFile& file) {
  Slots slots;
  for (int i = 0; i < 2; ++i) {
    const auto bytes = file.read(static_cast<std::uint64_t>(i) * kApart, kLine);
    if (!bytes) return tl::unexpected(bytes.error());
    slots.one[i] = read_slot(*bytes);
    slots.written[i] = bytes->find_first_not_of('\0') != std::string::npos;
  }
  return slots;
}

int later(const Slots& slots) {
  if (!slots.one[0] || !slots.one[1]) return slots.one[0] ? 0 : 1;
  return slots.one[0]->seq >= slots.one[1]->seq ? 0 : 1;
}

Failed trouble(const fs::path& path, const std::error_code& code) {
  return fail(Error::Kind::book, path.string(),
              "the note of the head cannot be kept: " + code.message(),
              "The book is kept all the same; look at the disk");
}

fs::path kept_path(const fs::path& file, int n) {
  return file.string() + fmt::format(".{}", n);
}

Done<void> put_aside(PlainDisk& disk, const fs::path& file) {
  for (int n = 1; n <= kMostKept; ++n) {
    const auto done = disk.rename(file, kept_path(file, n));
    if (done || done.error() != std::errc::file_exists) return done;
  }
  return tl::unexpected(std::make_error_code(std::errc::file_exists));
}

}  // namespace

fs::path note_path(const fs::path& book) {
  return book.string() + ".head";
}

NoteRead read_note(PlainDisk& disk, const fs::path& file) {
  using State = NoteRead::State;
  const auto opened = disk.open_to_read(file);
  if (!opened) {
    const auto& why = opened.error();
    return {why == std::errc::no_such_file_or_directory ? State::none
            : not_ours(why)                             ? State::damaged
                                                        : State::unreadable,
            {},
            false};
  }
  const auto slots = read_slots(**opened);
  if (!slots) return {State::unreadable, {}, false};
  if (!slots->one[0] && !slots->one[1]) return {State::damaged, {}, false};
  const int other = 1 - later(*slots);
  return {State::whole, *slots->one[later(*slots)], slots->written[other] && !slots->one[other]};
}

Result<HeadNoteFile> HeadNoteFile::open(PlainDisk& disk, const fs::path& book,
                                        const std::string& uuid, const HashAt& at) {
  HeadNoteFile note;
  note.path_ = note_path(book);
  note.uuid_ = uuid;
  const auto read = read_note(disk, note.path_);
  if (read.state == NoteRead::State::unreadable) {
    return trouble(note.path_, std::make_error_code(std::errc::io_error));
  }
  bool ours = false;
  if (read.state == NoteRead::State::whole && read.note.uuid == uuid) {
    const auto stored = at(read.note.seq);
    if (!stored) return Failed{stored.error()};
    ours = *stored && **stored == read.note.hash;
  }
  auto file = disk.open(note.path_);
  if (!file && ours) return trouble(note.path_, file.error());
  if (file) {
    const auto slots = read_slots(**file);
    if (!slots) return trouble(note.path_, slots.error());
    const bool empty = !slots->written[0] && !slots->written[1];  // begun, and cut short
    if (ours) note.next_ = 1 - later(*slots);
    if (!ours && !empty) file = tl::unexpected(std::error_code{});
  }
  if (!file) {
    if (read.state != NoteRead::State::none) {
      if (const auto done = put_aside(disk, note.path_); !done) {
        return trouble(note.path_, done.error());
      }
    }
    file = disk.make(note.path_);
    if (!file) return trouble(note.path_, file.error());
  }
  if (const auto done = disk.sync_folder(note.path_.parent_path()); !done) {
    return trouble(note.path_, done.error());
  }
  note.file_ = std::move(*file);
  return note;
}

Result<void> HeadNoteFile::write(std::int64_t seq, const Hash& hash) {
  const auto at = static_cast<std::uint64_t>(next_) * kApart;
  if (!file_->in_place()) {
    return trouble(path_, std::make_error_code(std::errc::no_such_file_or_directory));
  }
  if (const auto put = file_->write(at, slot_text({uuid_, seq, hash})); !put) {
    return trouble(path_, put.error());
  }
  if (const auto done = file_->sync(); !done) return trouble(path_, done.error());
  next_ = 1 - next_;  // only then: a line that was not confirmed is written again
  return {};
}

std::vector<NoteBeside> read_notes(PlainDisk& disk, const fs::path& book) {
  std::vector<NoteBeside> notes;
  const auto main = note_path(book);
  for (int n = 0; n <= kMostKept; ++n) {
    const auto path = n == 0 ? main : kept_path(main, n);
    auto read = read_note(disk, path);
    if (read.state != NoteRead::State::none) {
      notes.push_back({path.filename().string(), std::move(read), n == 0});
    } else if (n > 0) {
      break;
    }
  }
  return notes;
}

Result<NoteVerdict> judge_notes(const std::vector<NoteBeside>& notes, const BookName& name,
                                std::int64_t last, const HeadNoteFile::HashAt& at) {
  NoteVerdict verdict;
  for (const auto& [file, read, present] : notes) {
    if (read.state != NoteRead::State::whole) {
      verdict.damaged = verdict.damaged || present;
      continue;
    }
    const auto& note = read.note;
    if (note.uuid != name.uuid) {
      if (present) {
        verdict.faults.push_back(
            fmt::format("The note of the head beside it ({}) is of another book", file));
      }
      continue;
    }
    const auto stored = at(note.seq);
    if (!stored) return Failed{stored.error()};
    const auto end = event_id(name.tag, note.seq).text;
    if (note.seq == last + 1) {
      verdict.faults.push_back(
          fmt::format("Event {} was acknowledged and is not here ({})", end, file));
    } else if (note.seq > last) {
      verdict.faults.push_back(
          fmt::format("Events {} to {} were acknowledged and are not here ({})",
                      event_id(name.tag, last + 1).text, end, file));
    } else if (!*stored || **stored != note.hash) {
      verdict.faults.push_back(
          fmt::format("Event {} is not the one that was acknowledged ({})", end, file));
    } else if (present) {
      verdict.vouched = note.seq;
    }
  }
  return verdict;
}

}  // namespace rb::store
