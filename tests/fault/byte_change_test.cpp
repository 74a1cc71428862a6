// One byte changed anywhere in a book, its log, its mirror or the note of its head: harmless, or
// told. No pour but the changed event's own loses anything, and none loses anything unsaid.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <map>
#include <random>
#include <set>

#include "../store/samples.h"
#include "app/book_pours.h"
#include "cli/write_day.h"
#include "soak.h"
#include "store/book/head_note.h"
#include "store/book/row_reader.h"
#include "store/copies/against.h"
#include "store/copies/mirror.h"
#include "store/file/device_key.h"
#include "store/file/row_text.h"

using namespace rb;
using namespace rb::samples;

namespace {

constexpr unsigned kSeed = 20260309;
constexpr int kTaps = 14;  // of each pour
const std::vector<PourId> kPours{PourId{"N1"}, PourId{"N2"}, PourId{"N3"}};

/// What a book gives of its pours.
struct Shown {
  std::map<PourId, PourRead> reads;
  std::vector<PourMark> marks;
  std::vector<PourId> ids, of_day;
};

/// A book and what stands beside it, as it was before anything was changed.
struct Sample {
  fs::path book, mirror, note;
  std::vector<fs::path> files;  ///< those a byte is changed in
  Shown truth;
  std::int64_t last = 0;
};

/// Three pours tapped in turn, the first closed and its head signed.
void tap(Logbook& book, const Folder& folder) {
  REQUIRE(book.sign_with(got(store::DeviceKey::ready(folder / "key"))));
  for (const auto& pour : kPours) got(book.append(pour, open_event(pour.text), entry_at(0)));
  for (int i = 1; i < kTaps; ++i) {
    for (const auto& pour : kPours) {
      const auto letters = static_cast<std::size_t>(20 + 37 * i % 300);
      const std::string text =
          i == 5 ? wide(1500) : std::string(letters, static_cast<char>('a' + i));
      got(book.append(pour, note(text, i), entry_at(i)));
    }
    if (i == 9) CHECK(book.empty_log());  // the file holds a part, a log the rest
  }
  got(book.append(kPours[0], happening(event::PourClose{}, 30), entry_at(30)));
  got(book.append(kPours[1], note("the last", 31), entry_at(31)));
}

Result<Shown> shown(const Logbook& book) {
  Shown all;
  const auto page = book.pours(PourQuery{});
  if (!page) return Failed{page.error()};
  all.marks = page->pours;
  const auto ids = book.pour_ids();
  if (!ids) return Failed{ids.error()};
  all.ids = *ids;
  const auto day = *parse_moment("2026-03-02T00:00:00.000Z");
  const auto of_day = book.pours_in({day, day + std::chrono::hours{24}});
  if (!of_day) return Failed{of_day.error()};
  all.of_day = *of_day;
  for (const auto& pour : kPours) {
    auto read = book.read(pour);
    if (!read) return Failed{read.error()};
    all.reads[pour] = std::move(*read);
  }
  return all;
}

Sample sample(const Folder& folder, const char* name, bool with_log) {
  const auto at = folder / name;
  fs::create_directory(at);
  Sample made{.book = at / "book.risebook", .mirror = {}, .note = {}, .files = {}, .truth = {}};
  {
    auto book = got(Logbook::create(folder / "made.risebook"));
    tap(book, folder);
    if (!with_log) REQUIRE(book.empty_log());
    fs::copy_file(folder / "made.risebook", made.book);
    if (with_log) fs::copy_file(folder / "made.risebook-wal", made.book.string() + "-wal");
    made.truth = got(shown(book));
    made.last = got(book.head()).seq;
    auto reader = got(store::RowReader::open(book.file()));
    made.mirror = at / ("book-" + book.tag() + ".riseline").c_str();
    std::ofstream lines(made.mirror, std::ios::binary);
    lines << store::line_of(reader.name());
    for (const auto& row : got(reader.after(0, 1000))) lines << store::line_of(row);
    const auto hash_at = [&](std::int64_t seq) { return reader.hash_at(seq); };
    auto note =
        got(store::HeadNoteFile::open(store::plain_disk(), made.book, book.uuid(), hash_at));
    for (const auto seq : {made.last - 1, made.last}) REQUIRE(note.write(seq, *got(hash_at(seq))));
    made.note = store::note_path(made.book);
  }
  made.files = {made.book, made.mirror, made.note};
  if (with_log) made.files.emplace_back(made.book.string() + "-wal");
  for (const char* part : {"", "-wal", "-shm", ".lock"}) {
    fs::remove((folder / "made.risebook").string() + part);
  }
  return made;
}

/// One byte of a file changed while this lives.
class Changed {
 public:
  Changed(const fs::path& file, std::size_t at, char to) : file_(file), at_(at) {
    std::fstream open(file, std::ios::in | std::ios::out | std::ios::binary);
    open.seekg(static_cast<std::streamoff>(at));
    was_ = static_cast<char>(open.get());
    put(to == was_ ? static_cast<char>(to ^ 1) : to);
  }
  Changed(const Changed&) = delete;
  Changed& operator=(const Changed&) = delete;
  ~Changed() { put(was_); }

 private:
  void put(char byte) const {
    std::fstream open(file_, std::ios::in | std::ios::out | std::ios::binary);
    open.seekp(static_cast<std::streamoff>(at_));
    open.put(byte);
  }
  fs::path file_;
  std::size_t at_;
  char was_ = 0;
};

enum class Outcome { harmless, told, silent };

/// What was seen at one changed byte; `says` tells of a silent one.
struct Seen {
  Outcome outcome = Outcome::harmless;
  std::string says;
};

Seen silent(std::string says) {
  return {Outcome::silent, std::move(says)};
}

bool same(const Shown& a, const Shown& b) {
  for (const auto& [pour, read] : a.reads) {
    if (read.events != b.reads.at(pour).events || !read.damaged.empty()) return false;
  }
  return a.marks == b.marks && a.ids == b.ids && a.of_day == b.of_day;
}

/// Whether all that is shown was in the book, as much as one changed event allows: at most one
/// event of one pour is not shown, and that pour tells of it; `cut`: or it was the very last.
std::string wrong_in(const Shown& found, const Sample& sample, bool& cut) {
  std::size_t less = 0;
  for (const auto& [pour, read] : found.reads) {
    const auto& truth = sample.truth.reads.at(pour).events;
    std::size_t next = 0;
    for (const auto& event : read.events) {
      while (next < truth.size() && !(truth[next] == event)) ++next;
      if (next++ == truth.size()) return pour.text + " shows " + event.id.text + " as it never was";
    }
    const auto lost = truth.size() - read.events.size();
    less += lost;
    if (lost == 0) continue;
    const bool tail = read.events.size() + 1 == truth.size() &&
                      std::equal(read.events.begin(), read.events.end(), truth.begin()) &&
                      pour == kPours[1];
    if (read.damaged.empty() && !tail) return pour.text + " is short and does not tell";
    cut = cut || (read.damaged.empty() && tail);
    for (const auto* list : {&found.ids, &found.of_day}) {
      if (std::find(list->begin(), list->end(), pour) == list->end()) {
        return pour.text + " is not listed";
      }
    }
  }
  if (less > 1) return fmt::format("{} events are not shown", less);
  for (const auto& pour : kPours) {
    if (std::find(found.ids.begin(), found.ids.end(), pour) == found.ids.end()) {
      return pour.text + " is not listed";
    }
    if (std::find(found.of_day.begin(), found.of_day.end(), pour) == found.of_day.end()) {
      return pour.text + " is not found by its day";
    }
  }
  return {};
}

/// The book without the note beside it.
Result<VerifyReport> alone(const Sample& sample, const Logbook& book) {
  const auto away = sample.note.string() + "-away";
  fs::rename(sample.note, away);
  auto report = book.verify();
  fs::rename(away, sample.note);
  return report;
}

Seen look_at_book(const Sample& sample) {
  const auto book = Logbook::open(sample.book, Access::read);
  if (!book) return silent("cannot be opened: " + to_text(book.error()));
  const auto found = shown(*book);
  if (!found) return silent("cannot be shown: " + to_text(found.error()));
  bool cut = false;
  if (const auto wrong = wrong_in(*found, sample, cut); !wrong.empty()) return silent(wrong);
  const auto report = book->verify();
  if (!report) return silent("cannot be verified: " + to_text(report.error()));
  if (report->sound() && same(*found, sample.truth)) {
    return report->last == sample.last ? Seen{} : silent("says it is whole, its end wrong");
  }
  if (report->sound()) return silent("is called whole beside its note");
  const auto bare = alone(sample, *book);
  if (bare && bare->sound() && !cut) return silent("is called whole without its note");
  if (bare && bare->sound() && (bare->vouched || bare->last != sample.last - 1)) {
    return silent("does not tell how far it is whole");
  }
  return {Outcome::told, {}};
}

Seen look_at_mirror(const Sample& sample) {
  const auto answers = store::hold_against(sample.book, {sample.mirror.string()});
  if (!answers) return {Outcome::told, {}};
  if (answers->front().says.find("damaged") != std::string::npos || !answers->front().had) {
    return {Outcome::told, {}};
  }
  const auto read = store::read_mirror(store::plain_disk(), sample.mirror);
  if (!read || read->rows.size() != static_cast<std::size_t>(sample.last) ||
      read->rows.back().row.seq != sample.last) {
    return silent("the mirror is short and does not tell");
  }
  return {};
}

Seen look_at_note(const Sample& sample) {
  const auto book = got(Logbook::open(sample.book, Access::read));
  const auto report = got(book.verify());
  if (!report.sound()) return silent("a sound book is blamed: " + report.faults.front());
  if (report.vouched == sample.last) return {};
  if (report.note_damaged || report.vouched == sample.last - 1) return {Outcome::told, {}};
  return silent("the note is not told to be damaged");
}

/// The check of every pour, the record of its day and taps into it, in a copy.
std::string work_with(const Sample& sample, const Folder& folder) {
  const auto at = folder / "worked";
  fs::remove_all(at);
  fs::create_directory(at);
  const auto path = at / "book.risebook";
  fs::copy_file(sample.book, path);
  const auto log = sample.book.string() + "-wal";
  if (fs::exists(log)) fs::copy_file(log, path.string() + "-wal");
  {
    const auto book = got(Logbook::open(path, Access::read));
    for (const auto& pour : got(chosen_pours(book, std::nullopt))) {
      const auto read = read_pour(book, pour);
      if (!read) return "cannot be checked: " + to_text(read.error());
    }
    const auto day = *parse_moment("2026-03-02T00:00:00.000Z");
    const auto written = write_day(book, plain_day(day, {}), at, {*parse_format("json")});
    if (!written) return "cannot be recorded: " + to_text(written.error());
    const auto text = bytes_of(written->files.front());
    for (const auto& pour : kPours) {
      if (text.find('"' + pour.text + '"') == std::string::npos) {
        return pour.text + " is not in the record";
      }
    }
  }
  auto book = Logbook::open(path, Access::write);
  if (!book) return "cannot be opened for writing: " + to_text(book.error());
  if (!book->writable()) return book->read_only_reason() ? "" : "is read only and does not say why";
  for (const auto& pour : kPours) {
    const auto kept = book->append(pour, note("on it goes", 40), entry_at(40));
    if (!kept) return "takes no tap: " + to_text(kept.error());
  }
  return {};
}

}  // namespace

TEST_CASE("any one byte changed in a book, its log, its mirror or its note is harmless or told") {
  const Folder folder;
  const std::vector<Sample> samples{sample(folder, "rest", false), sample(folder, "log", true)};
  for (const auto& each : samples) {
    const auto seen = look_at_book(each);
    REQUIRE_MESSAGE(seen.outcome == Outcome::harmless, seen.says);
    REQUIRE(look_at_mirror(each).outcome == Outcome::harmless);
    REQUIRE(look_at_note(each).outcome == Outcome::harmless);
    REQUIRE(work_with(each, folder).empty());
  }
  const int rounds = soak::rounds(300);
  MESSAGE("seed " << kSeed << ", rounds " << rounds);
  std::mt19937 random(kSeed);
  std::map<Outcome, int> count;
  int failed = 0;
  for (int round = 0; round < rounds; ++round) {
    const auto& in = samples[random() % samples.size()];
    // The book and its log four times of five.
    const bool database = random() % 5 != 0;
    const auto& file = !database             ? in.files[1 + random() % 2]
                       : in.files.size() > 3 ? in.files[random() % 2 * 3]
                                             : in.files[0];
    const auto at = random() % fs::file_size(file);
    const auto to = static_cast<char>(random());
    const Changed changed(file, at, to);
    auto seen = file == in.mirror ? look_at_mirror(in)
                : file == in.note ? look_at_note(in)
                                  : look_at_book(in);
    fs::remove(in.book.string() + "-shm");
    if (database && round % 10 == 0 && seen.outcome != Outcome::silent) {
      if (auto wrong = work_with(in, folder); !wrong.empty()) seen = silent(std::move(wrong));
    }
    ++count[seen.outcome];
    if (seen.outcome != Outcome::silent) continue;
    ++failed;
    FAIL_CHECK("round " << round << ", " << file.filename().string() << " byte " << at << " (page "
                        << at / 4096 + 1 << "+" << at % 4096 << ") to "
                        << static_cast<int>(static_cast<unsigned char>(to)) << ": " << seen.says);
  }
  MESSAGE(count[Outcome::harmless] << " harmless, " << count[Outcome::told] << " told, "
                                   << count[Outcome::silent] << " silent");
  soak::tell("byte-changes", rounds, failed);
}

TEST_CASE("bytes that once hid events, found by chance, are told") {
  const Folder folder;
  const auto rest = sample(folder, "rest", false);
  const auto log = sample(folder, "log", true);
  const auto log_file = log.book.string() + "-wal";
  const auto told = [&](const Sample& in, const fs::path& file, std::size_t at, char to) {
    const Changed changed(file, at, to);
    auto seen = look_at_book(in);
    fs::remove(in.book.string() + "-shm");
    const auto wrong = work_with(in, folder);
    CAPTURE(at);
    CHECK_MESSAGE(seen.outcome == Outcome::told, seen.says);
    CHECK_MESSAGE(wrong.empty(), wrong);
  };
  // The bytes SQLite is told to leave at the end of each page.
  told(rest, rest.book, 20, 86);
  // A row that stands in one frame only, with acknowledged events behind it.
  for (const std::size_t at : {21023U, 21090U, 21194U}) told(log, log_file, at, '\xd4');
  // The name of a column, in the schema; the book's own row; the first bytes; the version.
  const auto bytes = bytes_of(rest.book);
  for (const auto* word : {"kept INTEGER NOT NULL", "CREATE TABLE head", "CREATE TABLE book"}) {
    const auto at = bytes.rfind(word);
    REQUIRE(at != std::string::npos);
    told(rest, rest.book, at, 'X');
    told(rest, rest.book, at + 13, 'X');
  }
  // Byte 18, the version for writing, hides nothing: the book is read whole and the first tap
  // refused.
  for (const std::size_t at : {0U, 5U, 16U, 17U, 19U, 60U, 63U, 68U, 71U}) {
    told(rest, rest.book, at, '\x7d');
  }
}
