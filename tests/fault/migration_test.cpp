// An older book is brought up to date on a disk that fails, fills up or loses power in the middle.
#include <doctest/doctest.h>

#include "../store/older_book.h"
#include "fault_vfs.h"
#include "soak.h"

using namespace rb;
using namespace rb::faults;
using namespace rb::samples;

namespace {

/// The book holds what it held, at the old version or the new, and goes on.
void check_unharmed(const fs::path& path, const std::vector<std::string>& before) {
  CHECK(rows_of(path) == before);
  auto book = got(Logbook::open(path, Access::write));
  REQUIRE(book.writable());
  CHECK(got(book.verify()).sound());
  got(book.append(PourId{"N1"}, note("goes on"), entry_at(70)));
  CHECK(got(book.verify()).sound());
  CHECK(got(book.events(PourId{"N1"})).size() == 43);
}

struct Kind {
  const char* name;
  Fault fault;
  int at_least;
};
constexpr Kind kKinds[] = {
    {"write", Fault::write, 15}, {"disk full", Fault::full, 15}, {"sync", Fault::sync, 3}};

}  // namespace

TEST_CASE("a disk that fails while a book is brought up to date costs nothing of it") {
  for (const auto& kind : kKinds) {
    CAPTURE(std::string(kind.name));
    int n = 0;
    for (bool clean = false; !clean;) {
      n += soak::kEvery;
      CAPTURE(n);
      const Folder folder;
      const auto path = folder / "book.risebook";
      make_version_1(path, two_pours());
      const auto before = rows_of(path);
      FaultyDisk disk;
      disk.fail(kind.fault, n);
      {
        const auto book = Logbook::open(path, Access::write);
        if (book && !book->writable()) {  // then it is read all the same
          CHECK(book->read_only_reason());
          CHECK(got(book->events(PourId{"N1"})).size() == 42);
        }
      }
      clean = !disk.struck();
      disk.heal();
      check_unharmed(path, before);
    }
    CHECK(n > kind.at_least);
    MESSAGE(std::string(kind.name) << ": " << (n - 1) << " faults, each survived");
  }
}

TEST_CASE("power lost while a book is brought up to date leaves the old book or the new one") {
  using Left = FaultyDisk::Left;
  for (const auto left : {Left::nothing, Left::everything, Left::chance, Left::chance}) {
    CAPTURE(static_cast<int>(left));
    int n = 0, old = 0;
    for (bool clean = false; !clean;) {
      n += soak::kEvery;
      CAPTURE(n);
      const Folder folder;
      const auto path = folder / "book.risebook";
      make_version_1(path, two_pours());
      const auto before = rows_of(path);
      std::mt19937 random(20260302U + static_cast<unsigned>(n));
      FaultyDisk disk;
      disk.fail(Fault::power, n);
      { const auto book = Logbook::open(path, Access::write); }
      clean = !disk.struck();
      disk.lose_power(folder.path(), left, random);
      const auto version = version_of(path);
      if (version == 1) ++old;
      CHECK((version == 1 || version == 2));
      // Brought up to date, it has its copy beside it, whole.
      const auto copy = folder / "book.risebook.before-2";
      if (version == 2) CHECK(rows_of(copy) == before);
      check_unharmed(path, before);
    }
    CHECK(n > 20);
    CHECK(old > 10 / soak::kEvery);
    MESSAGE((n - 1) << " moments, " << old << " of them with the old book left");
  }
}
