// What the store does to files of others: nothing. What it makes is the user's own.
#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>

#include "samples.h"
#include "store/file/writer_lock.h"

using namespace rb;
using namespace rb::samples;

namespace {

mode_t mode_of(const fs::path& path) {
  struct stat info {};
  REQUIRE(lstat(path.c_str(), &info) == 0);
  return info.st_mode & 07777U;
}

Error refused(const Result<Logbook>& answer) {
  REQUIRE_FALSE(answer);
  CHECK(answer.error().kind == Error::Kind::book);
  return answer.error();
}

}  // namespace

TEST_CASE("a new book, its lock, its log and its folder are the user's own, whatever the umask") {
  for (const mode_t mask : {0000U, 0022U, 0077U}) {
    CAPTURE(mask);
    const Folder folder;
    const mode_t before = umask(mask);
    {
      const auto book = book_with_pour(folder / "a/b/book.risebook");
      CHECK(mode_of(folder / "a/b/book.risebook") == 0600);
      CHECK(mode_of(folder / "a/b/book.risebook-wal") == 0600);
      CHECK(mode_of(folder / "a/b/book.risebook.lock") == 0600);
    }
    umask(before);
    CHECK(mode_of(folder / "a") == 0700);
    CHECK(mode_of(folder / "a/b") == 0700);
  }
}

TEST_CASE("what stands where the lock belongs and is not ours is left as it is") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  book_with_pour(path);
  const auto lock = path.string() + ".lock";
  const auto letter = folder / "letter";
  std::ofstream(letter) << "dear sir";
  SUBCASE("a link to a file") {
    fs::remove(lock);
    fs::create_symlink(letter, lock);
  }
  SUBCASE("a link to nothing") {
    fs::remove(lock);
    fs::create_symlink(folder / "nothing", lock);
  }
  SUBCASE("a second name of a file") {
    fs::remove(lock);
    fs::create_hard_link(letter, lock);
  }
  SUBCASE("a file with other words") {
    fs::remove(lock);
    std::ofstream(lock) << "dear madam";
  }
  SUBCASE("a long file of figures") {
    std::ofstream(lock, std::ios::trunc) << std::string(5000, '7');
  }
  SUBCASE("a pipe") {
    fs::remove(lock);
    REQUIRE(mkfifo(lock.c_str(), 0600) == 0);
  }
  SUBCASE("a folder") {
    fs::remove(lock);
    fs::create_directory(lock);
  }
  const auto status = fs::symlink_status(lock);
  const auto bytes = fs::is_regular_file(status) ? bytes_of(lock) : std::string{};
  const auto error = refused(Logbook::open(path, Access::write));
  CHECK(error.trouble == BookTrouble::in_the_way);
  CHECK(error.where.text() == lock);
  CHECK(fs::symlink_status(lock).type() == status.type());
  if (fs::is_regular_file(status)) CHECK(bytes_of(lock) == bytes);
  CHECK(bytes_of(letter) == "dear sir");
  CHECK_FALSE(fs::exists(folder / "nothing"));
  CHECK(Logbook::open(path, Access::read));
}

TEST_CASE("a lock file of ours is taken again, as it is now and as it was before") {
  const Folder folder;
  for (const char* words : {"", "12345\n", "risebook 4194304\n"}) {
    CAPTURE(std::string{words});
    std::ofstream(folder / "book.lock", std::ios::trunc) << words;
    CHECK(store::WriterLock::take(folder / "book"));
    CHECK(bytes_of(folder / "book.lock") == "risebook " + std::to_string(getpid()) + "\n");
  }
}

TEST_CASE("a book with a second name is read and not written") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  book_with_pour(path);
  fs::create_hard_link(path, folder / "second.risebook");
  CHECK(refused(Logbook::open(path, Access::write)).trouble == BookTrouble::many_names);
  CHECK(Logbook::open(path, Access::read));
  fs::remove(folder / "second.risebook");
  CHECK(Logbook::open(path, Access::write));
}

TEST_CASE("a book named by a link is the book it points to: one lock, one log, beside it") {
  const Folder folder;
  fs::create_directory(folder / "far");
  const auto path = folder / "far/book.risebook";
  book_with_pour(path);
  fs::create_symlink(path, folder / "near.risebook");
  auto book = got(Logbook::open(folder / "near.risebook", Access::write));
  CHECK(book.file() == fs::canonical(path));
  CHECK(refused(Logbook::open(path, Access::write)).trouble == BookTrouble::second_start);
  CHECK_FALSE(fs::exists(folder / "near.risebook.lock"));
}

TEST_CASE("a link to nothing is not followed to make a book there") {
  const Folder folder;
  fs::create_symlink(folder / "nothing", folder / "book.risebook");
  CHECK(refused(Logbook::create(folder / "book.risebook")).trouble == BookTrouble::in_the_way);
  CHECK_FALSE(fs::exists(folder / "nothing"));
}

TEST_CASE("each way a book does not open has a name of its own") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  CHECK(refused(Logbook::open(path, Access::read)).trouble == BookTrouble::not_there);
  std::ofstream(folder / "letter") << "dear sir";
  CHECK(refused(Logbook::open(folder / "letter", Access::read)).trouble == BookTrouble::not_a_book);
  CHECK(refused(Logbook::create(folder / "letter/book.risebook")).trouble ==
        BookTrouble::no_folder);
  auto book = book_with_pour(path);
  CHECK(refused(Logbook::open(path, Access::write)).trouble == BookTrouble::second_start);
}

TEST_CASE("a sound book is read where there is no room for one byte more") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  book_with_pour(path);
  const auto child = fork();
  if (child == 0) {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit none{0, 0};
    if (setrlimit(RLIMIT_FSIZE, &none) != 0) _exit(9);
    const auto book = Logbook::open(path, Access::read);
    if (!book) _exit(1);
    const auto events = book->events(PourId{"N1"});
    if (!events || events->size() != 1) _exit(2);
    const auto report = book->verify();
    _exit(report && report->sound() ? 0 : 3);
  }
  int status = 0;
  waitpid(child, &status, 0);
  CHECK(WEXITSTATUS(status) == 0);
}

TEST_CASE("what an event holds is bounded, by the name of its field; what a book holds is read") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  CHECK(book.append(PourId{"N1"}, note(std::string(2000, 'x')), entry_at(1)));
  const auto long_note = book.append(PourId{"N1"}, note(std::string(2001, 'x')), entry_at(2));
  REQUIRE_FALSE(long_note);
  CHECK(long_note.error().kind == Error::Kind::input);
  CHECK(to_text(long_note.error()).find("field text") != std::string::npos);
  CHECK(to_text(long_note.error()).find("2000") != std::string::npos);
  CHECK(got(book.events(PourId{"N1"})).size() == 2);
}

TEST_CASE(
    "an event out of a book says when the book took it; the same event from a script does not") {
  const Folder folder;
  auto book = book_with_pour(folder / "book.risebook");
  const auto kept = got(book.append(PourId{"N1"}, note("kept"), entry_at(3)));
  REQUIRE(kept.entry);
  REQUIRE(kept.entry->kept);
  const auto read = got(book.events(PourId{"N1"})).back();
  CHECK(read == kept);
  CHECK(read.entry->kept == kept.entry->kept);
  const auto again = got(parse_event(to_line(read), "again"));
  CHECK(again == read);
  CHECK_FALSE(again.entry->kept);
}
