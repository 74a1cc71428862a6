// The program between screens and book on a disk that is slow, full, gone or not its own: a tap is
// on the screen at once, and what is said of it is true.
#include "app/session.h"

#include <doctest/doctest.h>

#include <atomic>
#include <thread>

#include "fault_vfs.h"
#include "life.h"
#include "pour/log/event.h"

using namespace rb;
using namespace rb::faults;
using samples::Folder;
using State = screens::Keeping::State;

namespace {

using Steady = std::chrono::steady_clock;

struct Hands {
  Moment now = samples::five_past(30);
  Entry operator()() const { return {now, now.time_since_epoch(), "boot"}; }
};

std::unique_ptr<Session> opened(const std::filesystem::path& path, Keeper::Hooks hooks = {}) {
  auto session = got(Session::open(path, Hands{}, std::chrono::minutes{0}, std::move(hooks)));
  REQUIRE(session->settle());
  REQUIRE(session->pour() != nullptr);
  return session;
}

std::filesystem::path pour_in(const Folder& folder) {
  auto path = folder / "a.risebook";
  samples::book_with_pour(path, "N1");
  return path;
}

void note(Session& session, const std::string& text) {
  session.act({screens::KeepEvent{event::Note{text, {}, {}}, Hands{}.now}});
}

std::size_t in_book(const std::filesystem::path& path) {
  return got(got(Logbook::open(path, Access::read)).events(kPour)).size();
}

/// Looks until the taps stand so.
bool comes(Session& session, State state) {
  for (int i = 0; i < 5000; ++i) {
    if (session.look().keeping.state == state) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  return false;
}

}  // namespace

TEST_CASE("a tap is on the screen at once, keeping until the disk has answered, then kept") {
  FaultyDisk disk;
  const Folder folder;
  const auto path = pour_in(folder);
  std::atomic<int> woken{0};
  auto session = opened(path, {.on_kept = {}, .wake = [&] { ++woken; }});
  disk.slow(std::chrono::milliseconds(150));
  const int before = woken;
  note(*session, "one");
  const auto now = session->look();
  CHECK(now.state->log.size() == 2);
  CHECK(now.keeping.state == State::keeping);
  CHECK(now.keeping.here == 1);
  CHECK(session->would_lose());
  CHECK(session->settle());
  CHECK(session->look().keeping.state == State::kept);
  CHECK(session->look().keeping.here == 0);
  CHECK_FALSE(session->would_lose());
  for (int i = 0; i < 1000 && woken == before; ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  CHECK(woken > before);
  CHECK(in_book(path) == 2);
}

TEST_CASE("on a disk of 300 ms a sync, 100 taps never hold up who draws") {
  FaultyDisk disk;
  const Folder folder;
  const auto path = pour_in(folder);
  auto session = opened(path);
  disk.slow(std::chrono::milliseconds(300));
  Seconds longest{};
  for (int i = 0; i < 100; ++i) {
    const auto began = Steady::now();
    note(*session, "note " + std::to_string(i));
    (void)session->look();
    longest = std::max(longest, Seconds{Steady::now() - began});
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  MESSAGE("longest " << longest.count() * 1000 << " ms");
  CHECK(longest < Seconds{0.05});
  CHECK(session->settle(Seconds{20}));
  CHECK(in_book(path) == 101);
}

TEST_CASE("on a full disk the taps wait, are told of, and are kept when there is room") {
  FaultyDisk disk;
  const Folder folder;
  const auto path = pour_in(folder);
  auto session = opened(path);
  disk.fail(Fault::full, 1, true);
  note(*session, "one");
  note(*session, "two");
  REQUIRE(comes(*session, State::waiting));
  const auto keeping = session->look().keeping;
  CHECK(keeping.waiting == 2);
  CHECK(keeping.here == 2);
  CHECK(keeping.since == Hands{}.now);
  CHECK(keeping.why.find("the disk is full") != std::string::npos);
  CHECK(session->pour()->log.size() == 3);
  CHECK(session->would_lose());
  CHECK_FALSE(session->settle(Seconds{0.1}));
  CHECK(in_book(path) == 1);  // a full disk still lets the book be read
  disk.heal();
  CHECK(session->settle());
  CHECK(in_book(path) == 3);
}

TEST_CASE("a pour left and entered again while its taps wait shows them") {
  FaultyDisk disk;
  const Folder folder;
  const auto path = pour_in(folder);
  auto session = opened(path);
  disk.fail(Fault::full, 1, true);
  note(*session, "one");
  REQUIRE(comes(*session, State::waiting));
  session->act({screens::LeavePour{}});
  CHECK_FALSE(session->settle(Seconds{0.2}));
  CHECK(session->pour() == nullptr);
  session->act({screens::GoToPour{kPour}});
  CHECK_FALSE(session->settle(Seconds{0.2}));
  REQUIRE(session->pour() != nullptr);
  CHECK(session->pour()->log.size() == 2);
  CHECK(session->look().keeping.here == 1);
  disk.heal();
  CHECK(session->settle());
  CHECK(session->pour()->log.size() == 2);
}

TEST_CASE("a book moved away is told of before the next tap is called kept") {
  const Folder folder;
  const auto path = pour_in(folder);
  auto session = opened(path);
  std::filesystem::rename(path, folder / "elsewhere");
  note(*session, "one");
  REQUIRE(comes(*session, State::moved_away));
  CHECK(session->look().keeping.waiting == 1);
  std::filesystem::rename(folder / "elsewhere", path);
  CHECK(session->settle());
  CHECK(session->look().keeping.state == State::kept);
  CHECK(in_book(path) == 2);
}

TEST_CASE("a book open elsewhere is read, says so before the first tap, and refuses taps aloud") {
  const Folder folder;
  const auto path = pour_in(folder);
  const auto first = opened(path);
  const auto second = opened(path);
  const auto world = second->look();
  CHECK(world.keeping.state == State::read_only);
  CHECK(world.keeping.why.find("open in another Risebook") != std::string::npos);
  REQUIRE(world.state != nullptr);
  note(*second, "refused");
  REQUIRE(second->look().trouble);
  CHECK(second->look().trouble->not_kept);
  CHECK(second->pour()->log.size() == 1);
  CHECK(first->look().keeping.state == State::kept);
}
