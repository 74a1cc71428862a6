// A file cut off at every KiB: every event whose pages lie whole before the cut is rescued.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <map>
#include <set>

#include "../store/samples.h"
#include "soak.h"
#include "store/book/row_reader.h"
#include "store/copies/mirror.h"
#include "store/copies/rescue.h"
#include "store/file/row_text.h"

using namespace rb;
using namespace rb::samples;

namespace {

constexpr std::size_t kCut = 1024;
constexpr std::size_t kStep = soak::kEvery * kCut;

/// Two pours of `taps` events; some are of several pages. Tells the log's size after each.
Logbook book_of(const fs::path& path, int taps, std::vector<std::size_t>* log_after = nullptr) {
  auto book = got(Logbook::create(path));
  for (const char* pour : {"N1", "N2"}) {
    for (int i = 0; i < taps; ++i) {
      auto event = open_event(pour);
      if (i > 0)
        event = note(
            i % 9 == 4 ? wide(1900) : std::string(static_cast<std::size_t>(60 + i * 31 % 700), 'x'),
            i);
      got(book.append(PourId{pour}, event, entry_at(i)));
      if (log_after) log_after->push_back(fs::file_size(path.string() + "-wal"));
    }
  }
  return book;
}

/// The pages each event's row lies on, as SQLite's own table of pages tells it (dbstat): a leaf's
/// rows follow one another in order of their numbers; overflow pages name their leaf and cell.
std::map<std::int64_t, std::set<std::int64_t>> pages_of_events(const fs::path& path) {
  SQLite::Database bare(path.string(), SQLite::OPEN_READONLY);
  std::map<std::string, std::pair<std::int64_t, std::int64_t>> leaves;  // path: page, cells
  std::map<std::string, std::set<std::int64_t>> overflow;               // path of leaf and cell
  SQLite::Statement pages(bare,
                          "SELECT path, pageno, pagetype, ncell FROM dbstat WHERE name = 'events'");
  while (pages.executeStep()) {
    const auto at = pages.getColumn(0).getString();
    const auto kind = pages.getColumn(2).getString();
    const auto page = pages.getColumn(1).getInt64();
    if (kind == "leaf") leaves[at] = {page, pages.getColumn(3).getInt64()};
    if (kind == "overflow") overflow[at.substr(0, at.find('+'))].insert(page);
  }
  std::map<std::int64_t, std::set<std::int64_t>> found;
  SQLite::Statement numbers(bare, "SELECT seq FROM events ORDER BY seq");
  for (const auto& [at, leaf] : leaves) {
    for (std::int64_t cell = 0; cell < leaf.second; ++cell) {
      REQUIRE(numbers.executeStep());
      auto& mine = found[numbers.getColumn(0).getInt64()];
      mine.insert(leaf.first);
      const auto more = overflow.find(fmt::format("{}{:03x}", at, cell));
      if (more != overflow.end()) mine.insert(more->second.begin(), more->second.end());
    }
  }
  return found;
}

std::set<std::int64_t> rescued(const fs::path& from, const fs::path& to,
                               const std::optional<fs::path>& mirror = {}) {
  std::set<std::int64_t> numbers;
  if (!store::rescue_book(from, to, mirror)) return numbers;
  auto reader = got(store::RowReader::open(to));
  for (const auto& row : got(reader.after(0, 100'000))) {
    CHECK(row.holds());
    numbers.insert(row.row.seq);
  }
  for (const char* part : {"", "-wal", "-shm", ".lock"}) fs::remove(to.string() + part);
  return numbers;
}

void put(const fs::path& path, const std::string& bytes, std::size_t count) {
  std::ofstream(path, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(count));
}

}  // namespace

TEST_CASE("a book cut off at any KiB: every event whose pages lie before the cut is rescued") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  { book_of(path, 40); }
  const auto pages = pages_of_events(path);
  REQUIRE(pages.size() == 80);
  const auto mirror = folder / "book.riseline";
  {
    auto reader = got(store::RowReader::open(path));
    std::ofstream lines(mirror, std::ios::binary);
    lines << store::line_of(reader.name());
    for (const auto& row : got(reader.after(0, 1000))) lines << store::line_of(row);
  }
  const auto bytes = bytes_of(path);
  for (const char* part : {"", "-wal", "-shm"}) fs::remove(path.string() + part);
  std::size_t cuts = 0, saved = 0, owed = 0;
  for (std::size_t cut = 0; cut <= bytes.size(); cut += kStep) {
    CAPTURE(cut);
    put(path, bytes, cut);
    const auto found = rescued(path, folder / "new.risebook");
    for (const auto& [seq, on] : pages) {
      const bool whole = on.empty() || static_cast<std::size_t>(*on.rbegin()) * 4096 <= cut;
      if (whole) CHECK(found.contains(seq));
      owed += whole ? 1 : 0;
    }
    saved += found.size();
    ++cuts;
    if (cut % (16 * kCut) == 0) {
      CHECK(rescued(path, folder / "new.risebook", mirror).size() == 80);  // with a mirror: all
    }
  }
  MESSAGE(cuts << " cuts of a book of " << bytes.size() << " bytes: " << owed << " events owed, "
               << saved << " saved");
  CHECK(saved >= owed);
}

TEST_CASE("a log cut off at any KiB: every event committed before the cut is rescued") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  std::vector<std::size_t> log_after;
  std::string file, log;
  {
    const auto book = book_of(path, 25, &log_after);
    file = bytes_of(path);
    log = bytes_of(path.string() + "-wal");
  }
  REQUIRE(log.size() >= log_after.back());
  const auto damaged = folder / "damaged.risebook";
  std::size_t cuts = 0, saved = 0, owed = 0;
  for (std::size_t cut = 0; cut <= log.size(); cut += kStep) {
    CAPTURE(cut);
    put(damaged, file, file.size());
    put(damaged.string() + "-wal", log, cut);
    const auto found = rescued(damaged, folder / "new.risebook");
    for (std::size_t i = 0; i < log_after.size(); ++i) {
      if (log_after[i] > cut) break;
      ++owed;
      CHECK(found.contains(static_cast<std::int64_t>(i) + 1));
    }
    saved += found.size();
    ++cuts;
  }
  MESSAGE(cuts << " cuts of a log of " << log.size() << " bytes: " << owed << " events owed, "
               << saved << " saved");
  // The book itself cut, its log whole: what the log holds is saved.
  for (std::size_t cut = 0; cut <= file.size(); cut += kStep) {
    CAPTURE(cut);
    put(damaged, file, cut);
    put(damaged.string() + "-wal", log, log.size());
    CHECK(rescued(damaged, folder / "new.risebook").size() == log_after.size());
  }
}
