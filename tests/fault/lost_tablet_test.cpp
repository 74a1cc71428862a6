// The tablet is lost in the middle of a pour, with its book. Another goes on from the stick.
#include <doctest/doctest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <random>
#include <thread>

#include "../store/samples.h"
#include "alone.h"
#include "pour/log/fold.h"
#include "store/copies/copy_book.h"
#include "store/copies/mirror_keeper.h"

using namespace rb;
using namespace rb::samples;

namespace {

const PourId kPour{"N1"};

struct Told {
  std::int64_t kept = 0, mirrored = 0;
};

/// The life of the tablet, in a process of its own: tells of each tap once it is kept, with what
/// the light said then, and goes on until it is killed.
[[noreturn]] void live(const fs::path& file, const fs::path& stick, int to, int pace_ms) {
  auto book = book_with_pour(file, kPour.text);
  store::MirrorKeeper mirror(file, stick, {.now = [] { return five_past(0); }, .changed = {}});
  mirror.note_kept(1, five_past(0));
  const RowPlace row{ElementId{"W1"}, Side::near_side, RowId{"R1"}};
  for (std::int64_t seq = 2;; ++seq) {
    const auto event = seq == 2   ? happening(event::LiftStart{ElementId{"W1"}, 1}, 2)
                       : seq == 3 ? happening(event::Run{row, {}}, 3)
                                  : note("tap " + std::to_string(seq), 4);
    if (!book.append(kPour, event, entry_at(static_cast<int>(seq)))) _exit(1);
    mirror.note_kept(seq, five_past(static_cast<int>(seq)));
    const Told told{seq, mirror.status().mirrored.value_or(0)};
    if (write(to, &told, sizeof told) != sizeof told) _exit(2);
    std::this_thread::sleep_for(std::chrono::milliseconds{pace_ms});
  }
}

/// Lets the tablet live until `enough` of what it told; then it is gone, and its book with it.
template <class Enough>
Told lose(const fs::path& tablet, const fs::path& stick, int pace_ms, Enough&& enough) {
  std::array<int, 2> ends{};
  REQUIRE(pipe(ends.data()) == 0);
  test::wait_until_alone();
  const auto child = fork();
  if (child == 0) {
    close(ends[0]);
    live(tablet / "pours.risebook", stick, ends[1], pace_ms);
  }
  close(ends[1]);
  Told last, told;
  while (read(ends[0], &told, sizeof told) == sizeof told) {
    last = told;
    if (enough(last)) break;
  }
  kill(child, SIGKILL);
  while (read(ends[0], &told, sizeof told) == sizeof told) last = told;
  close(ends[0]);
  int how = 0;
  waitpid(child, &how, 0);
  REQUIRE(WIFSIGNALED(how));
  fs::remove_all(tablet);
  return last;
}

fs::path mirror_on(const fs::path& stick) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(stick)) files.push_back(entry.path());
  REQUIRE(files.size() == 1);
  return files[0];
}

}  // namespace

TEST_CASE("the tablet lost in the middle of a pour: another goes on from the stick") {
  const Folder folder;
  const auto tablet = folder / "tablet", stick = folder / "stick", other = folder / "other";
  for (const auto& made : {tablet, stick, other}) fs::create_directory(made);
  // A tap every 20 ms; lost when the light, asked at the next tap, says that the one before is
  // there.
  const auto last = lose(tablet, stick, 20, [](const Told& told) { return told.kept >= 40; });
  CHECK(last.mirrored >= last.kept - 1);

  const auto file = other / "pours.risebook";
  const auto restored = got(store::restore_book(mirror_on(stick), file));
  CHECK(restored.lacks.empty());
  CHECK(restored.events >= last.mirrored);  // nothing the light vouched for is missing
  auto book = got(Logbook::open(file, Access::write));
  auto state = got(fold(got(book.events(kPour))));
  REQUIRE(state.log.size() == static_cast<std::size_t>(restored.events));
  // The row that ran when the tablet was lost is seen to run, and rests here.
  const RowPlace row{ElementId{"W1"}, Side::near_side, RowId{"R1"}};
  const auto rest = happening(event::Rest{row}, 90);
  got(book.append(kPour, rest, entry_at(90)));
  got(book.append(kPour, happening(event::PourClose{}, 95), entry_at(95)));
  state = got(fold(got(book.events(kPour))));
  CHECK(state.closed);
  CHECK(got(book.verify()).sound());
  // And the same stick goes on with the pour.
  store::MirrorKeeper mirror(file, stick, {.now = [] { return five_past(0); }, .changed = {}});
  for (int i = 0; i < 2000 && mirror.status().mirrored != restored.events + 2; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  }
  CHECK(mirror.status().mirrored == restored.events + 2);
  CHECK(mirror.status().file == mirror_on(stick));
}

TEST_CASE("a tablet lost at any moment leaves a mirror of all that its light vouched for") {
  std::mt19937 random(20260302);
  std::int64_t missing = 0;
  for (int round = 0; round < 12; ++round) {
    CAPTURE(round);
    const Folder folder;
    const auto tablet = folder / "tablet", stick = folder / "stick";
    fs::create_directory(tablet);
    fs::create_directory(stick);
    const auto taps = 3 + static_cast<std::int64_t>(random() % 60);
    const auto last = lose(tablet, stick, 0, [&](const Told& told) { return told.kept >= taps; });
    if (last.mirrored == 0) continue;
    const auto restored = got(store::restore_book(mirror_on(stick), folder / "other.risebook"));
    CHECK(restored.events >= last.mirrored);
    CHECK(restored.lacks.size() <= 1);  // a line cut short
    missing = std::max(missing, last.kept - restored.events);
    const auto book = got(Logbook::open(folder / "other.risebook", Access::read));
    CHECK(got(book.verify()).sound());
  }
  MESSAGE("taps as fast as the disk takes them: at most " << missing << " behind at the loss");
}
