// Copies of a book in use, and books made again from a copy or a mirror.
#include "store/copies/copy_book.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <sys/stat.h>

#include <atomic>
#include <fstream>
#include <thread>

#include "samples.h"
#include "store/copies/copy_job.h"
#include "store/copies/mirror_keeper.h"

using namespace rb;
using namespace rb::samples;

namespace {

std::vector<fs::path> files_in(const fs::path& folder) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(folder)) files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

/// The mirror of a book, caught up.
fs::path mirror_of(const fs::path& book, const fs::path& folder, std::int64_t last) {
  store::MirrorKeeper keeper(book, folder, {.now = [] { return five_past(0); }, .changed = {}});
  for (int i = 0; i < 2000 && keeper.status().mirrored != last; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  }
  REQUIRE(keeper.status().mirrored == last);
  return keeper.status().file;
}

}  // namespace

TEST_CASE("a copy holds what the book holds, is whole, and overwrites nothing") {
  const Folder folder;
  auto book = book_with_pour(folder / "pours.risebook");
  got(book.append_script(script("N2"), entry_at(3)));
  const auto first = got(store::copy_book(folder / "pours.risebook", folder / "copies"));
  CHECK(first.events == 11);
  CHECK(first.head_hash == got(book.head_hash()));
  const auto before = bytes_of(first.file);
  const auto second = got(store::copy_book(folder / "pours.risebook", folder / "copies"));
  CHECK(second.file != first.file);
  CHECK(bytes_of(first.file) == before);
  CHECK(files_in(folder / "copies").size() == 2);
  const auto copy = got(Logbook::open(first.file, Access::read));
  CHECK(copy.uuid() == book.uuid());
  CHECK(got(copy.events(PourId{"N2"})) == got(book.events(PourId{"N2"})));
  struct stat is {};
  REQUIRE(stat(first.file.c_str(), &is) == 0);
  CHECK((is.st_mode & 077U) == 0);
}

TEST_CASE("taps go on while a copy is made") {
  const Folder folder;
  auto book = book_with_pour(folder / "pours.risebook");
  for (int i = 0; i < 400; ++i) {
    got(book.append(PourId{"N1"}, note(wide(1000), 1), entry_at(1)));
  }
  std::atomic<int> steps{0};
  const auto copy =
      got(store::copy_book(folder / "pours.risebook", folder / "copies", [&](double done) {
        CHECK(done <= 1);
        ++steps;
        got(book.append(PourId{"N1"}, note("more"), entry_at(2)));
        return true;
      }));
  CHECK(steps > 1);
  CHECK(copy.events == 401);
  CHECK(got(book.verify()).events == 401 + static_cast<std::size_t>(steps));
}

TEST_CASE("nothing is left of a copy that was stopped, or of a book that does not hold") {
  const Folder folder;
  auto book = book_with_pour(folder / "pours.risebook");
  SUBCASE("stopped") {
    CHECK(!store::copy_book(folder / "pours.risebook", folder / "copies",
                            [](double) { return false; }));
  }
  SUBCASE("no book") {
    CHECK(!store::copy_book(folder / "none.risebook", folder / "copies"));
  }
  SUBCASE("damaged") {
    {
      SQLite::Database raw((folder / "pours.risebook").string(), SQLite::OPEN_READWRITE);
      raw.exec("DROP TRIGGER events_never_change; UPDATE events SET entered = 0");
    }
    const auto copy = store::copy_book(folder / "pours.risebook", folder / "copies");
    REQUIRE(!copy);
    CHECK(copy.error().what.text().find("no copy was made") != std::string::npos);
  }
  if (fs::exists(folder / "copies")) CHECK(files_in(folder / "copies").empty());
}

TEST_CASE("a book is restored from a copy or a mirror as it was, and goes on") {
  const Folder folder, site;
  const auto file = folder / "pours.risebook";
  auto book = book_with_pour(file);
  got(book.append_script(script("N2"), entry_at(3)));
  fs::create_directory(folder / "stick");
  fs::path from;
  SUBCASE("copy") {
    from = got(store::copy_book(file, folder / "stick")).file;
  }
  SUBCASE("mirror") {
    from = mirror_of(file, folder / "stick", 11);
  }
  const auto to = site / "again.risebook";
  const auto report = got(store::restore_book(from, to));
  CHECK(report.lacks.empty());
  CHECK(report.events == 11);
  CHECK(report.head_hash == got(book.head_hash()));
  auto again = got(Logbook::open(to, Access::write));
  CHECK(again.uuid() == book.uuid());
  CHECK(again.tag() == book.tag());
  CHECK(again.created() == book.created());
  CHECK(got(again.events(PourId{"N2"})) == got(book.events(PourId{"N2"})));
  CHECK(got(again.verify()).sound());
  got(again.append(PourId{"N1"}, note("goes on"), entry_at(9)));
  CHECK(got(again.verify()).sound());
  CHECK(files_in(site.path()).size() >= 1);
}

TEST_CASE("restoring refuses where anything stands, and beside what another book left") {
  const Folder folder;
  const auto file = folder / "pours.risebook";
  { const auto book = book_with_pour(file); }
  const auto copy = got(store::copy_book(file, folder / "copies")).file;
  for (const char* left : {"", "-wal", "-shm", "-journal", ".head"}) {
    CAPTURE(left);
    const Folder site;
    const fs::path stands = (site / "again.risebook").string() + left;
    SUBCASE("a file") {
      std::ofstream(stands) << "of another";
      CHECK(!store::restore_book(copy, site / "again.risebook"));
      CHECK(bytes_of(stands) == "of another");
    }
    SUBCASE("a link to nothing") {
      fs::create_symlink(site / "none", stands);
      CHECK(!store::restore_book(copy, site / "again.risebook"));
    }
    CHECK(files_in(site.path()).size() == 1);
  }
}

TEST_CASE("a restored book says what its mirror lacks") {
  const Folder folder;
  const auto file = folder / "pours.risebook";
  {
    auto book = book_with_pour(file);
    got(book.append_script(script("N2"), entry_at(3)));
  }
  fs::create_directory(folder / "stick");
  const auto mirror = mirror_of(file, folder / "stick", 11);
  auto text = bytes_of(mirror);
  text[text.find("misread")] = 'X';
  std::ofstream(mirror, std::ios::binary) << text;
  const auto report = got(store::restore_book(mirror, folder / "again.risebook"));
  CHECK(report.events == 10);
  REQUIRE(report.lacks.size() == 2);
  CHECK(report.lacks[0].find("-5 is not in it") != std::string::npos);
  CHECK(report.lacks[1] == "Line 7 is damaged");
}

TEST_CASE("a copy made beside the drawing tells how far it is, and how it ended") {
  const Folder folder;
  auto book = book_with_pour(folder / "pours.risebook");
  for (int i = 0; i < 300; ++i) {
    got(book.append(PourId{"N1"}, note(wide(1000), 1), entry_at(1)));
  }
  std::atomic<int> woken{0};
  store::CopyJob job(folder / "pours.risebook", folder / "copies", [&] { ++woken; });
  for (int i = 0; i < 4000 && !job.status().end; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  }
  REQUIRE(job.status().end);
  CHECK(got(std::move(*job.status().end)).events == 301);
  CHECK(job.status().done == 1);
  CHECK(woken > 1);
}
