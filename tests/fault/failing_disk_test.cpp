// The Nth write, sync or read fails, for N = 1, 2, 3 ... until a life of the book passes clean.
#include <doctest/doctest.h>

#include "fault_vfs.h"
#include "life.h"
#include "pour/log/event.h"
#include "soak.h"

using namespace rb;
using namespace rb::faults;
using samples::entry_at;
using samples::Folder;

namespace {

/// The book as a crash at this moment would leave it, every written byte on the disk.
void check_not_kept_stays_not_kept(const std::filesystem::path& path, const Life& life) {
  const Folder elsewhere;
  const auto copy = elsewhere / "copy.risebook";
  std::filesystem::copy_file(path, copy);
  if (std::filesystem::exists(path.string() + "-wal")) {
    std::filesystem::copy_file(path.string() + "-wal", copy.string() + "-wal");
  }
  CHECK(got(got(Logbook::open(copy, Access::read)).events(kPour)) == life.acknowledged);
}

/// A tap that is entered again when the first try says it was not kept.
void stubborn_tap(Logbook& book, Life& life, const Event& event, int minute) {
  if (tap(book, life, event, minute)) return;
  check_not_kept_stays_not_kept(book.file(), life);
  CHECK(tap(book, life, event, minute));
}

/// A disk that fails once: what fails is entered again, and the book holds exactly what it said.
Life life_with_one_failure(const std::filesystem::path& path) {
  Life life;
  auto made = Logbook::create(path);
  auto book = made ? std::move(*made) : got(Logbook::open_or_create(path));
  life.made = true;
  stubborn_tap(book, life, samples::open_event("N1"), 0);
  for (int i = 1; i <= 3; ++i) {
    stubborn_tap(book, life, samples::note("note " + std::to_string(i)), i);
  }
  if (!book.append_script(samples::script("N2"), entry_at(4))) {
    CHECK(got(book.events(kScriptPour)).empty());
    got(book.append_script(samples::script("N2"), entry_at(4)));
  }
  life.script_acknowledged = true;
  stubborn_tap(book, life, samples::note(samples::wide(2000)), 5);
  { const auto last = std::move(book); }
  auto opened = Logbook::open(path, Access::write);
  auto again = opened ? std::move(*opened) : got(Logbook::open(path, Access::write));
  stubborn_tap(again, life, samples::note("the next day"), 900);
  CHECK(got(again.events(kPour)) == life.acknowledged);
  return life;
}

/// A disk that stays broken: every later tap is tried once.
Life life_with_a_broken_disk(const std::filesystem::path& path) {
  Life life;
  auto book = Logbook::create(path);
  if (!book) return life;
  life.made = true;
  for (int i = 0; i <= 3; ++i) {
    tap(*book, life, i == 0 ? samples::open_event("N1") : samples::note(std::to_string(i)), i);
  }
  life.script_acknowledged = book->append_script(samples::script("N2"), entry_at(4)).has_value();
  if (!life.acknowledged.empty()) tap(*book, life, samples::note(samples::wide(2000)), 5);
  return life;
}

struct Kind {
  const char* name;
  Fault fault;
  int at_least;  ///< faults of this kind that a life meets: the sweep did not end early
};
constexpr Kind kKinds[] = {
    {"write", Fault::write, 60}, {"disk full", Fault::full, 60}, {"sync", Fault::sync, 10}};

}  // namespace

TEST_CASE("a disk that fails once costs no acknowledged event and keeps none it refused") {
  for (const auto& kind : kKinds) {
    CAPTURE(std::string(kind.name));
    int n = 0;
    for (bool clean = false; !clean;) {
      n += soak::kEvery;
      CAPTURE(n);
      const Folder folder;
      const auto path = folder / "book.risebook";
      FaultyDisk disk;
      disk.fail(kind.fault, n);
      const auto life = life_with_one_failure(path);
      clean = !disk.struck();
      disk.heal();
      check_survival(path, life);
    }
    CHECK(n > kind.at_least);
    MESSAGE(std::string(kind.name) << ": " << (n - 1) << " faults, each survived");
  }
}

TEST_CASE("a disk that breaks for good costs no acknowledged event") {
  for (const auto& kind : kKinds) {
    CAPTURE(std::string(kind.name));
    int n = 0;
    for (bool clean = false; !clean;) {
      n += soak::kEvery;
      CAPTURE(n);
      const Folder folder;
      const auto path = folder / "book.risebook";
      FaultyDisk disk;
      disk.fail(kind.fault, n, true);
      const auto life = life_with_a_broken_disk(path);
      clean = !disk.struck();
      disk.heal();
      check_survival(path, life);
    }
    CHECK(n > kind.at_least / 2);
  }
}

TEST_CASE("a read that fails is told, not taken for an empty book") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  Life life;
  {
    auto book = got(Logbook::create(path));
    life.made = true;
    tap(book, life, samples::open_event("N1"), 0);
    for (int i = 1; i <= 30; ++i) tap(book, life, samples::note(std::string(2'000, 'x')), i);
  }
  int told = 0;
  int n = 0;
  for (bool clean = false; !clean;) {
    n += soak::kEvery;
    CAPTURE(n);
    FaultyDisk disk;
    disk.fail(Fault::read, n);
    const auto book = Logbook::open(path, Access::read);
    if (book) {
      const auto events = book->events(kPour);
      if (events) {
        CHECK(*events == life.acknowledged);
      } else {
        CHECK(events.error().kind == Error::Kind::book);
        ++told;
      }
    } else {
      CHECK(book.error().kind == Error::Kind::book);
      ++told;
    }
    clean = !disk.struck();
  }
  CHECK(told > 10 / soak::kEvery);
  check_survival(path, life);
}

TEST_CASE("a full disk is named in plain words") {
  const Folder folder;
  FaultyDisk disk;
  auto book = samples::book_with_pour(folder / "book.risebook");
  disk.fail(Fault::full, 1, true);
  const auto kept = book.append(kPour, samples::note("one"), entry_at(1));
  REQUIRE_FALSE(kept);
  CHECK(kept.error().kind == Error::Kind::book);
  CHECK(kept.error().what.text() == "the tap was NOT kept: the disk is full");
  CHECK(kept.error().remedy.text() == "Free some space and try again");
}
