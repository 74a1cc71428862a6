// The writer's thread against a disk that fails, fills up, loses an answer or goes away: nothing
// tapped is thrown away, nothing is kept twice, and "kept" is only said when it is true.
#include "store/keep/keeper.h"
#include "pour/log/event.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include <atomic>
#include <thread>

#include "fault_vfs.h"
#include "life.h"

using namespace rb;
using namespace rb::faults;
using samples::entry_at;
using samples::Folder;

namespace {

constexpr Seconds kSoon{10};

Keeper::Pace hurried() {
  return {.first_retry = Seconds{0.001},
          .longest_retry = Seconds{0.004},
          .rest = Seconds{0.01},
          .look = Seconds{0.01}};
}

struct Writer {
  explicit Writer(const std::filesystem::path& path, Keeper::Pace pace = hurried())
      : keeper(got(Keeper::start(
            samples::book_with_pour(path, "N1"),
            {.on_kept = [this](const BookHead& head) { told = head.seq; }, .wake = {}}, pace))) {}
  std::atomic<std::int64_t> told{1};
  std::unique_ptr<Keeper> keeper;
  std::vector<Event> tapped;

  void tap(int minute) {
    tapped.push_back(got(keeper->keep(
        kPour, samples::note("note " + std::to_string(minute), minute), entry_at(minute))));
  }
  /// Waits until the writer says so.
  bool comes(KeepState state) const {
    for (int i = 0; i < 5000; ++i) {
      if (keeper->status().state == state) return true;
      std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return false;
  }
};

std::vector<Event> notes_in(const std::filesystem::path& path) {
  auto events = got(got(Logbook::open(path, Access::read)).events(kPour));
  events.erase(events.begin());  // the opening
  return events;
}

}  // namespace

TEST_CASE("a tap is given back at once as the book holds it afterwards") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  std::vector<Event> tapped;
  {
    Writer writer(path);
    for (int i = 1; i <= 30; ++i) writer.tap(i);
    CHECK(writer.keeper->settle(kSoon));
    const auto status = writer.keeper->status();
    CHECK(status.state == KeepState::kept);
    CHECK(status.waiting == 0);
    CHECK(status.kept == 31);
    tapped = writer.tapped;
  }
  CHECK(notes_in(path) == tapped);
  CHECK(got(got(Logbook::open(path, Access::read)).verify()).sound());
}

TEST_CASE(
    "a disk that refuses for a while costs nothing: every tap is kept once, in order, with "
    "its own time") {
  for (const Fault fault : {Fault::write, Fault::full, Fault::sync}) {
    for (int nth = 1; nth <= 12; ++nth) {
      CAPTURE(static_cast<int>(fault));
      CAPTURE(nth);
      FaultyDisk disk;
      const Folder folder;
      const auto path = folder / "a.risebook";
      std::vector<Event> tapped;
      {
        Writer writer(path);
        disk.fail(fault, nth, nth % 2 == 0);
        for (int i = 1; i <= 4; ++i) {
          writer.tap(i);
          if (i == 2) std::this_thread::sleep_for(std::chrono::milliseconds(8));
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
        if (writer.keeper->status().waiting > 0) {
          CHECK(writer.keeper->status().state != KeepState::kept);
        }
        disk.heal();
        CHECK(writer.keeper->settle(kSoon));
        CHECK(writer.keeper->status().state == KeepState::kept);
        tapped = writer.tapped;
      }
      CHECK(notes_in(path) == tapped);
      CHECK(got(got(Logbook::open(path, Access::read)).verify()).sound());
    }
  }
}

TEST_CASE("while the disk is full the taps wait, counted and with the reason") {
  FaultyDisk disk;
  const Folder folder;
  Writer writer(folder / "a.risebook");
  disk.fail(Fault::full, 1, true);
  writer.tap(12);
  writer.tap(13);
  REQUIRE(writer.comes(KeepState::waiting));
  const auto status = writer.keeper->status();
  CHECK(status.waiting == 2);
  CHECK(status.oldest == entry_at(12).wall);
  REQUIRE(status.why);
  CHECK(status.why->what.text().find("the disk is full") != std::string::npos);
  CHECK(writer.told == 1);
  CHECK_FALSE(writer.keeper->settle(Seconds{0.02}));
  disk.heal();
  CHECK(writer.keeper->settle(kSoon));
  CHECK(writer.told == 3);
}

TEST_CASE("a tap that waited says when the book took it in") {
  FaultyDisk disk;
  const Folder folder;
  const auto path = folder / "a.risebook";
  {
    Writer writer(path);
    disk.fail(Fault::full, 1, true);
    writer.tap(12);
    std::this_thread::sleep_for(std::chrono::milliseconds(120));
    disk.heal();
    CHECK(writer.keeper->settle(kSoon));
  }
  SQLite::Database raw(path.string(), SQLite::OPEN_READONLY);
  const auto late = raw.execAndGet("SELECT kept - entered FROM events WHERE seq = 2").getInt();
  CHECK(late >= 100);
  CHECK(late < 10'000);
}

TEST_CASE("a book moved away is noticed before the next kept, and gone on with when it is back") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  std::vector<Event> tapped;
  {
    Writer writer(path);
    writer.tap(1);
    CHECK(writer.keeper->settle(kSoon));
    std::filesystem::rename(path, folder / "elsewhere");
    writer.tap(2);
    REQUIRE(writer.comes(KeepState::moved_away));
    CHECK_FALSE(writer.keeper->settle(Seconds{0.05}));
    CHECK(writer.told == 2);
    SUBCASE("another file in its place is not it") {
      std::ofstream(path) << "something else";
      CHECK_FALSE(writer.keeper->settle(Seconds{0.05}));
      CHECK(samples::bytes_of(path) == "something else");
      std::filesystem::remove(path);
    }
    SUBCASE("nothing in its place") {}
    std::filesystem::rename(folder / "elsewhere", path);
    CHECK(writer.keeper->settle(kSoon));
    CHECK(writer.told == 3);
    tapped = writer.tapped;
  }
  CHECK(notes_in(path) == tapped);
}

TEST_CASE("a book moved away at rest is noticed, and whole where it is") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  Writer writer(path);
  writer.tap(1);
  CHECK(writer.keeper->settle(kSoon));
  std::filesystem::rename(path, folder / "elsewhere");
  REQUIRE(writer.comes(KeepState::moved_away));
  CHECK(notes_in(folder / "elsewhere") == writer.tapped);
  std::filesystem::rename(folder / "elsewhere", path);
  CHECK(writer.comes(KeepState::kept));
}

TEST_CASE("a log deleted under the program loses nothing that is called kept") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  auto pace = hurried();
  pace.rest = Seconds{1000};
  Writer writer(path, pace);
  writer.tap(1);
  CHECK(writer.keeper->settle(kSoon));
  std::filesystem::remove(path.string() + "-wal");
  writer.tap(2);
  CHECK(writer.keeper->settle(kSoon));
  // What a crash would leave: the file alone.
  std::filesystem::copy_file(path, folder / "left.risebook");
  CHECK(notes_in(folder / "left.risebook") == writer.tapped);
}

TEST_CASE("after the last tap the one file is whole, and the log empty") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  Writer writer(path);
  for (int i = 1; i <= 5; ++i) writer.tap(i);
  CHECK(writer.keeper->settle_file(kSoon));
  CHECK(std::filesystem::file_size(path.string() + "-wal") == 0);
  std::filesystem::copy_file(path, folder / "copy.risebook");
  CHECK(notes_in(folder / "copy.risebook") == writer.tapped);
}

TEST_CASE("what the book refuses for its content comes back loudly, and those behind it are kept") {
  const Folder folder;
  const auto path = folder / "a.risebook";
  {
    Writer writer(path);
    got(writer.keeper->keep(PourId{"another"}, samples::note("no such pour"), entry_at(1)));
    const auto struck = got(writer.keeper->keep(kPour, samples::note("meant"), entry_at(2)));
    const auto strike = [&](const EventId& target, int seen) {
      return writer.keeper->keep(kPour, samples::happening(event::Strike{target, "typo"}),
                                 entry_at(3), seen);
    };
    // Where the book was quicker than the finger the id is void by now: said, never the wrong one.
    if (const auto first = strike(struck.id, 0); !first) {
      CHECK(first.error().kind == Error::Kind::refused);
      CHECK(writer.keeper->settle(kSoon));
      got(strike(EventId{writer.keeper->tag() + "-2"}, 1));
    }
    CHECK(writer.keeper->settle(kSoon));
    const auto refused = writer.keeper->take_refused();
    REQUIRE(refused.size() == 1);
    CHECK(std::get<event::Note>(refused[0].tap.event.what).text == "no such pour");
    CHECK(refused[0].why.kind == Error::Kind::input);
    CHECK(writer.keeper->status().renumbered == 1);
    writer.tap(4);
    CHECK(writer.keeper->settle(kSoon));
  }
  const auto events = notes_in(path);
  REQUIRE(events.size() == 3);
  CHECK(std::get<event::Note>(events[0].what).text == "meant");
  CHECK(std::get<event::Strike>(events[1].what).target == events[0].id);
}
