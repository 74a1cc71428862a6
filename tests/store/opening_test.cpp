// Which files are opened, by whom, and what is said otherwise.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <string>

#include "samples.h"

using namespace rb;
using namespace rb::samples;

namespace {

std::string words(const Result<Logbook>& refused) {
  REQUIRE_FALSE(refused);
  CHECK(refused.error().kind == Error::Kind::book);
  return to_text(refused.error());
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator(folder), fs::directory_iterator{}));
}

}  // namespace

TEST_CASE("a new book stands alone in its folder once it is closed") {
  const Folder folder;
  const auto path = folder / "a/b/book.risebook";
  got(Logbook::create(path));
  CHECK(files_in(path.parent_path()) == 2);  // and the empty lock
  CHECK(fs::exists(path.string() + ".lock"));
}

TEST_CASE("a book is not made where a file stands") {
  const Folder folder;
  const auto path = folder / "letter.txt";
  std::ofstream(path) << "dear sir";
  CHECK(says(words(Logbook::create(path)), "already a file"));
  CHECK(bytes_of(path) == "dear sir");
}

TEST_CASE("a book is not made beside what another book left") {
  const Folder folder;
  std::ofstream(folder / "book.risebook-wal") << "events perhaps";
  CHECK(says(words(Logbook::create(folder / "book.risebook")), "left from another book"));
  CHECK(bytes_of(folder / "book.risebook-wal") == "events perhaps");
}

TEST_CASE("what an interrupted making left is swept away, and nothing that only looks like it") {
  const Folder folder;
  std::ofstream(folder / ".book.risebook.0123456789abcdef.part") << "half";
  std::ofstream(folder / ".book.risebook.0123456789abcdef.part-journal") << "half";
  const std::array others{".book.risebook.0123456789abcdeg.part", ".book.risebook.0123.part",
                          ".other.risebook.0123456789abcdef.part", "book.risebook.new"};
  for (const char* name : others) std::ofstream(folder / name) << "another's";
  std::ofstream(folder / "letter") << "another's";
  fs::create_symlink(folder / "letter", folder / ".book.risebook.1111111111111111.part");
  fs::create_hard_link(folder / "letter", folder / ".book.risebook.2222222222222222.part");
  got(Logbook::create(folder / "book.risebook"));
  for (const char* name : others) CHECK(bytes_of(folder / name) == "another's");
  CHECK(bytes_of(folder / "letter") == "another's");
  CHECK(files_in(folder.path()) == 2 + others.size() + 3);
}

TEST_CASE("a book that is not there is told so and not made by opening it") {
  const Folder folder;
  CHECK(says(words(Logbook::open(folder / "none", Access::read)), "no book here"));
  CHECK(says(words(Logbook::open(folder / "none", Access::write)), "no book here"));
  CHECK(files_in(folder.path()) == 0);
}

TEST_CASE("open_or_create makes a book once and opens it after") {
  const Folder folder;
  const auto path = folder / "deep/book.risebook";
  const auto tag = got(Logbook::open_or_create(path)).tag();
  CHECK(got(Logbook::open_or_create(path)).tag() == tag);
}

TEST_CASE("a file that is no book is refused and left untouched") {
  const Folder folder;
  const auto path = folder / "file";
  SUBCASE("an empty file") {
    std::ofstream{path};
  }
  SUBCASE("a short text") {
    std::ofstream(path) << "x";
  }
  SUBCASE("a long text") {
    std::ofstream(path) << std::string(20'000, 'x');
  }
  SUBCASE("only the first words of a database") {
    std::ofstream(path) << "SQLite format 3";
  }
  SUBCASE("a database of another program") {
    SQLite::Database other(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    other.exec("CREATE TABLE t (x); INSERT INTO t VALUES (1)");
  }
  SUBCASE("a database of another program that writes ahead") {
    SQLite::Database other(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    other.exec("PRAGMA journal_mode = WAL; CREATE TABLE events (x); PRAGMA user_version = 1");
  }
  const auto before = bytes_of(path);
  for (const auto access : {Access::read, Access::write}) {
    CHECK(says(words(Logbook::open(path, access)), "not a book"));
  }
  CHECK(says(words(Logbook::open_or_create(path)), "not a book"));
  CHECK(bytes_of(path) == before);
  CHECK(files_in(folder.path()) == 1);
}

TEST_CASE("a folder is no book") {
  const Folder folder;
  CHECK(says(words(Logbook::open(folder.path(), Access::write)), "not a book"));
}

TEST_CASE("a book of a later version is refused, both versions named, and left untouched") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  book_with_pour(path);
  SQLite::Database(path.string(), SQLite::OPEN_READWRITE)
      .exec("CREATE TABLE later (x); PRAGMA user_version = 7");
  const auto before = bytes_of(path);
  for (const auto access : {Access::read, Access::write}) {
    const auto text = words(Logbook::open(path, access));
    CHECK(says(text, "version 7"));
    CHECK(says(text, "up to version 2"));
    CHECK(says(text, "newer Risebook"));
  }
  CHECK(bytes_of(path) == before);
}

TEST_CASE("names with signs a web address would read are just names") {
  const Folder folder;
  for (const char* name : {"50% & #2?mode=ro", "file:book", "Wände 3.OG", "a b\"c'd"}) {
    CAPTURE(std::string(name));
    const auto path = folder / name;
    book_with_pour(path);
    CHECK(fs::exists(path));
    CHECK(got(got(Logbook::open(path, Access::read)).events(PourId{"N1"})).size() == 1);
  }
}

TEST_CASE("a second writer is told who has the book") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  auto first = book_with_pour(path);
  const auto link = folder / "another-name";
  fs::create_symlink(path, link);
  for (const auto& name : {path, link}) {
    const auto text = words(Logbook::open(name, Access::write));
    CHECK(says(text, "The book is open in another Risebook"));
    CHECK(says(text, "process " + std::to_string(getpid())));
  }
  got(first.append(PourId{"N1"}, note("still mine"), entry_at(1)));
}

TEST_CASE("the book is free once its writer is gone, however it went") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  book_with_pour(path);
  int told[2];
  REQUIRE(pipe(told) == 0);
  const auto child = fork();
  if (child == 0) {
    const auto book = Logbook::open(path, Access::write);
    const char answer = book ? 'y' : 'n';
    static_cast<void>(!write(told[1], &answer, 1));
    pause();
    _exit(0);
  }
  char answer = 0;
  REQUIRE(read(told[0], &answer, 1) == 1);
  CHECK(answer == 'y');
  const auto text = words(Logbook::open(path, Access::write));
  CHECK(says(text, "process " + std::to_string(child)));
  kill(child, SIGKILL);
  waitpid(child, nullptr, 0);
  close(told[0]);
  close(told[1]);
  got(got(Logbook::open(path, Access::write)).append(PourId{"N1"}, note("mine"), entry_at(1)));
}

TEST_CASE("a book is read while it is written") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  auto writer = book_with_pour(path);
  const auto reader = got(Logbook::open(path, Access::read));
  for (int i = 1; i <= 5; ++i) {
    got(writer.append(PourId{"N1"}, note("note"), entry_at(i)));
    CHECK(got(reader.events(PourId{"N1"})) == got(writer.events(PourId{"N1"})));
    CHECK(got(reader.head_hash()) == got(writer.head_hash()));
    CHECK(got(reader.verify()).sound());
  }
  { const auto passing = got(Logbook::open(path, Access::read)); }
  got(writer.append(PourId{"N1"}, note("after a reader left"), entry_at(9)));
  CHECK(got(reader.events(PourId{"N1"})).size() == 7);
}

TEST_CASE("a book can be handed on") {
  const Folder folder;
  auto one = book_with_pour(folder / "book.risebook");
  Logbook two = std::move(one);
  got(two.append(PourId{"N1"}, note("handed on"), entry_at(1)));
  auto three = book_with_pour(folder / "other.risebook");
  three = std::move(two);
  CHECK(got(three.events(PourId{"N1"})).size() == 2);
  got(Logbook::open(folder / "other.risebook", Access::write));  // let go of by the assignment
}

TEST_CASE("another program's open transaction makes the tap wait, then says so") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  auto book = book_with_pour(path);
  SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
  bare.exec("BEGIN IMMEDIATE");
  const auto kept = book.append(PourId{"N1"}, note("waits"), entry_at(1));
  REQUIRE_FALSE(kept);
  CHECK(says(to_text(kept.error()), "NOT kept"));
  CHECK(says(to_text(kept.error()), "another program is writing"));
  bare.exec("COMMIT");
  got(book.append(PourId{"N1"}, note("goes through"), entry_at(2)));
  CHECK(got(book.events(PourId{"N1"})).size() == 2);
}

TEST_CASE("a book where nothing can be written is read as it stands") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  book_with_pour(path);
  fs::remove(path.string() + ".lock");
  fs::permissions(path, fs::perms(0444));
  fs::permissions(folder.path(), fs::perms(0555));
  const auto child = fork();
  if (child == 0) {
    if (geteuid() == 0 && setuid(65534) != 0) _exit(9);  // root may write anywhere
    const auto write = Logbook::open(path, Access::write);
    if (write || !says(to_text(write.error()), "cannot be opened for writing")) _exit(1);
    const auto book = Logbook::open(path, Access::read);
    if (!book) _exit(2);
    const auto events = book->events(PourId{"N1"});
    if (!events || events->size() != 1) _exit(3);
    const auto report = book->verify();
    _exit(report && report->sound() ? 0 : 4);
  }
  int status = 0;
  waitpid(child, &status, 0);
  CHECK(WEXITSTATUS(status) == 0);
  CHECK(files_in(folder.path()) == 1);
  fs::permissions(folder.path(), fs::perms(0755));
}
