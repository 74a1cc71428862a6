// The power goes at any moment; of what was not synced, chance keeps what it likes.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include <cstdlib>
#include <random>

#include "fault_vfs.h"
#include "life.h"
#include "soak.h"

using namespace rb;
using namespace rb::faults;
using samples::entry_at;
using samples::Folder;

namespace {

/// A life as long and as varied as `random` has it, until the power goes.
Life live(const std::filesystem::path& path, std::mt19937& random, int taps) {
  Life life;
  auto book = Logbook::create(path);
  life.made = book.has_value();
  for (int i = 0; book && i <= taps; ++i) {
    const auto size = std::uniform_int_distribution<std::size_t>(1, 6000)(random);
    auto event = samples::note(std::to_string(i) + samples::wide(size / 4), i);
    if (i == 0) event = samples::open_event("N1");
    if (!tap(*book, life, event, i)) return life;
    if (i == taps / 2) {
      life.script_acknowledged =
          book->append_script(samples::script("N2"), entry_at(i)).has_value();
    }
    if (i % 5 == 4) {  // closed and opened again: the log is brought into the book
      { const auto last = std::move(*book); }
      book = Logbook::open(path, Access::write);
    }
  }
  return life;
}

unsigned first_seed() {
  const char* given = std::getenv("RISEBOOK_SEED");
  return given ? static_cast<unsigned>(std::strtoul(given, nullptr, 10)) : 20260302U;
}

}  // namespace

TEST_CASE("the disk of these tests does lose what was not synced") {
  const Folder folder;
  const auto path = (folder / "careless.db").string();
  std::mt19937 random(1);
  for (const bool careful : {false, true}) {
    CAPTURE(careful);
    FaultyDisk disk;
    {
      SQLite::Database database(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
      database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL");
      database.exec("CREATE TABLE IF NOT EXISTS t (x); DELETE FROM t");
      database.exec(careful ? "PRAGMA synchronous = FULL" : "PRAGMA synchronous = OFF");
      database.exec("INSERT INTO t VALUES (1)");
      disk.fail(Fault::power, 1, true);
      CHECK_THROWS(database.exec("INSERT INTO t VALUES (2)"));
    }
    disk.lose_power(folder.path(), FaultyDisk::Left::nothing, random);
    SQLite::Database after(path, SQLite::OPEN_READWRITE);
    CHECK(after.execAndGet("SELECT count(*) FROM t").getInt() == (careful ? 1 : 0));
  }
}

TEST_CASE("power lost at any operation costs no acknowledged event") {
  using Left = FaultyDisk::Left;
  for (const auto left : {Left::nothing, Left::everything, Left::chance, Left::chance}) {
    CAPTURE(static_cast<int>(left));
    int n = 0;
    for (bool clean = false; !clean;) {
      n += soak::kEvery;
      CAPTURE(n);
      const Folder folder;
      const auto path = folder / "book.risebook";
      std::mt19937 random(first_seed() + static_cast<unsigned>(n));
      FaultyDisk disk;
      disk.fail(Fault::power, n);
      const auto life = live(path, random, 7);
      clean = !disk.struck();
      disk.lose_power(folder.path(), left, random);
      check_survival(path, life);
    }
    CHECK(n > 100);
    MESSAGE((n - 1) << " moments, each survived");
  }
}

TEST_CASE("power lost at a moment of chance costs no acknowledged event") {
  const int rounds = soak::rounds(400);
  int cut = 0;
  for (int round = 0; round < rounds; ++round) {
    const auto seed = first_seed() + static_cast<unsigned>(round);
    INFO("RISEBOOK_SEED=" << seed << " RISEBOOK_ROUNDS=1 repeats this");
    std::mt19937 random(seed);
    const Folder folder;
    const auto path = folder / "book.risebook";
    FaultyDisk disk;
    disk.fail(Fault::power, std::uniform_int_distribution(1, 400)(random));
    const auto life = live(path, random, std::uniform_int_distribution(1, 40)(random));
    if (disk.struck()) ++cut;
    disk.lose_power(folder.path(), FaultyDisk::Left::chance, random);
    check_survival(path, life);
  }
  CHECK(cut > rounds / 2);  // in the others the life was over before the moment came
  soak::tell("power-cuts", cut, 0);
}

TEST_CASE("power lost twice, the second time while the first is mended, costs nothing") {
  for (int n = 1; n <= 12; ++n) {
    CAPTURE(n);
    const Folder folder;
    const auto path = folder / "book.risebook";
    std::mt19937 random(first_seed() + static_cast<unsigned>(n));
    FaultyDisk disk;
    disk.fail(Fault::power, 90);
    const auto life = live(path, random, 20);
    REQUIRE(disk.struck());
    disk.lose_power(folder.path(), FaultyDisk::Left::chance, random);
    disk.fail(Fault::power, n);
    { const auto mending = Logbook::open(path, Access::write); }
    disk.lose_power(folder.path(), FaultyDisk::Left::chance, random);
    check_survival(path, life);
  }
}

TEST_CASE("a log long enough to be brought into the book while it grows loses nothing") {
  for (const int n : {40, 150, 500, 1000, 1060, 1100, 1200, 1500, 2000}) {
    CAPTURE(n);
    const Folder folder;
    const auto path = folder / "book.risebook";
    std::mt19937 random(first_seed() + static_cast<unsigned>(n));
    FaultyDisk disk;
    Life life;
    {
      auto book = got(Logbook::create(path));
      life.made = true;
      disk.fail(Fault::power, n);
      for (int i = 0; i < 420; ++i) {
        tap(book, life,
            i == 0 ? samples::open_event("N1")
                   : samples::note(std::to_string(i) + samples::wide(1990)),
            i);
      }
    }
    disk.lose_power(folder.path(), FaultyDisk::Left::chance, random);
    check_survival(path, life);
  }
}
