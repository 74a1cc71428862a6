// A book of an older version is read as it is, and brought up to date with a copy made first.
#include "older_book.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::samples;

namespace {

std::vector<std::string> files_in(const fs::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) {
    const auto name = entry.path().filename().string();
    // What SQLite needs to read a book at all.
    if (!name.ends_with("-shm") && !name.ends_with("-wal")) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  return names;
}

void check_content(const Logbook& book) {
  CHECK(got(book.events(PourId{"N1"})).size() == 42);
  CHECK(got(book.events(PourId{"N2"})).size() == 3);
  const auto page = got(book.pours(PourQuery{}));
  REQUIRE(page.pours.size() == 2);
  CHECK(page.all == 2);
  CHECK(page.pours[0].pour == PourId{"N1"});  // its close was struck: to be asked
  CHECK(page.pours[0].closed == PourMark::Closed::ask);
  CHECK(page.pours[1].closed == PourMark::Closed::yes);
  CHECK(page.pours[1].name == "Test wall");
  const auto report = got(book.verify());
  CHECK_MESSAGE(report.sound(), (report.sound() ? "" : report.faults.front()));
  CHECK(report.events == 45);
}

}  // namespace

TEST_CASE("an older book is brought up to date, its rows and hashes unchanged, a copy beside it") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  make_version_1(path, two_pours());
  const auto before = rows_of(path);
  {
    auto book = got(Logbook::open(path, Access::write));
    CHECK(book.writable());
    check_content(book);
    got(book.append(PourId{"N1"}, note("goes on"), entry_at(60)));
    CHECK(got(book.verify()).sound());
  }
  CHECK(version_of(path) == 2);
  auto after = rows_of(path);
  REQUIRE(after.size() == before.size() + 1);
  after.pop_back();
  CHECK(after == before);
  const auto copy = folder / "book.risebook.before-2";
  CHECK(version_of(copy) == 1);
  CHECK(rows_of(copy) == before);
  CHECK(files_in(folder.path()) ==
        std::vector<std::string>{"book.risebook", "book.risebook.before-2", "book.risebook.lock"});
}

TEST_CASE("a copy made before never writes over what stands there") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  make_version_1(path, two_pours());
  std::ofstream(folder / "book.risebook.before-2") << "a letter";
  fs::create_symlink(folder / "elsewhere", folder / "book.risebook.before-2-2");
  CHECK(got(Logbook::open(path, Access::write)).writable());
  CHECK(bytes_of(folder / "book.risebook.before-2") == "a letter");
  CHECK_FALSE(fs::exists(folder / "elsewhere"));
  CHECK(version_of(folder / "book.risebook.before-2-3") == 1);
}

TEST_CASE("an older book is read without being written to") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  make_version_1(path, two_pours());
  const auto before = bytes_of(path);
  {
    const auto book = got(Logbook::open(path, Access::read));
    CHECK_FALSE(book.writable());
    CHECK_FALSE(book.read_only_reason());
    check_content(book);
  }
  CHECK(bytes_of(path) == before);
  CHECK(files_in(folder.path()) == std::vector<std::string>{"book.risebook"});
}

TEST_CASE(
    "an older book with a log beside it is read with what the log holds, both left as they are") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  make_version_1(folder / "first.risebook", two_pours());
  SQLite::Database open(((folder / "first.risebook").string()), SQLite::OPEN_READWRITE);
  open.exec("PRAGMA wal_autocheckpoint = 0");
  // Any page will do; the book's own row is what a log of that version may always hold.
  open.exec("CREATE TABLE odd (x); DROP TABLE odd");
  fs::copy_file(folder / "first.risebook", path);
  fs::copy_file(folder / "first.risebook-wal", folder / "book.risebook-wal");
  const auto before = bytes_of(path) + bytes_of(folder / "book.risebook-wal");
  check_content(got(Logbook::open(path, Access::read)));
  CHECK(bytes_of(path) + bytes_of(folder / "book.risebook-wal") == before);
}

TEST_CASE("an older book whose rules were altered is read, not brought up to date") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  make_version_1(path, two_pours());
  SQLite::Database(path.string(), SQLite::OPEN_READWRITE).exec("DROP TRIGGER events_never_go");
  const auto before = bytes_of(path);
  {
    const auto book = got(Logbook::open(path, Access::write));
    CHECK_FALSE(book.writable());
    REQUIRE(book.read_only_reason());
    CHECK(to_text(*book.read_only_reason()).find("events_never_go is missing") !=
          std::string::npos);
    CHECK(got(book.events(PourId{"N1"})).size() == 42);
    CHECK_FALSE(got(book.verify()).sound());
  }
  CHECK(bytes_of(path) == before);
  CHECK(version_of(path) == 1);
}
