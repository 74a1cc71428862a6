// The commands on a disk that fills, dies, goes away or is slow: what was acknowledged is there
// afterwards, a script is kept whole or not at all, and the words say what is wrong.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <fstream>
#include <vector>

#include "program.h"

using namespace rb;
using namespace rb::faults;

namespace {

const std::string kDemo = RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl";

/// A book with the pour N1, kept while the disk was well; the demo pour is yet to come.
std::string begin(const BadDisk& disk) {
  auto text = samples::open_line("N1");
  std::replace(text.begin(), text.end(), '\n', ' ');
  std::ofstream(disk.good("first.jsonl")) << text << "\n";
  const auto ran = disk.run_well("replay '" + disk.good("first.jsonl").string() + "' --book '" +
                                 disk.book() + "'");
  REQUIRE_MESSAGE(ran.code == 0, ran.told);
  return "replay '" + kDemo + "' --book '" + disk.book() + "'";
}

std::size_t lines_of_demo() {
  std::ifstream demo(kDemo);
  std::size_t lines = 0;
  for (std::string line; std::getline(demo, line);) ++lines;
  return lines;
}

/// After any mishap, on a disk that is well again.
void check_kept(const BadDisk& disk, bool acknowledged) {
  const auto looked = disk.run_well("verify '" + disk.book() + "'");
  INFO(looked.told);
  CHECK(looked.code == 0);
  const bool whole = looked.says(fmt::format(": {} events", 1 + lines_of_demo()).c_str());
  CHECK((whole || looked.says(": 1 events")));
  if (acknowledged) CHECK(whole);
}

/// Replays with the disk as `word` N has it, N growing by `step`, until it is well enough.
int replay_until_kept(const char* word, int step, const std::vector<const char*>& words) {
  int n = 0;
  for (bool kept = false; !kept; n += step) {
    REQUIRE(n < 5'000'000);
    const BadDisk disk;
    const auto replay = begin(disk);
    disk.is(std::string(word) + " " + std::to_string(n));
    const auto ran = disk.run(replay);
    CAPTURE(n);
    INFO(ran.told);
    kept = ran.code == 0;
    if (!kept) {
      CHECK(ran.code == 3);
      CHECK(std::any_of(words.begin(), words.end(), [&](const char* w) { return ran.says(w); }));
      CHECK_FALSE(ran.says("damaged"));
    }
    check_kept(disk, kept);
  }
  return n / step - 1;
}

}  // namespace

TEST_CASE("a script replayed onto a disk that fills is kept whole or not at all") {
  const int refused = replay_until_kept("room", 4096, {"full", "could not be read or written"});
  CHECK(refused > 5);
  MESSAGE(refused << " sizes of room that were too small");
}

TEST_CASE("a script replayed onto a disk that dies is kept whole or not at all") {
  const int refused = replay_until_kept(
      "works", 1,
      {"could not be read or written", "cannot be opened", "Input/output error", "lock"});
  CHECK(refused > 5);
  MESSAGE(refused << " calls at which it died");
}

TEST_CASE("a sound book on a full disk is checked, looked over, exported and recorded as before") {
  const BadDisk disk;
  REQUIRE(disk.run(begin(disk)).code == 0);
  const std::string book = "--book '" + disk.book() + "'";
  std::filesystem::create_directory(disk.good("record"));
  std::filesystem::create_directory(disk.disk() / "record");
  const std::vector<std::string> commands{
      "check " + book, "check " + book + " --json", "verify '" + disk.book() + "'",
      "script " + book + " --pour CW2-L14",
      "dose " + book + " --pour CW2-L14 --element CW2 --at 3.9,1.4"};
  for (const auto& command : commands) {
    CAPTURE(command);
    const auto before = disk.run_well(command);
    disk.is("room 0");
    const auto full = disk.run(command);
    CHECK(full.code == before.code);
    CHECK(full.told == before.told);
  }
  disk.is("room 0");
  const auto day = "record " + book + " --day 2026-03-02 --utc-offset +00:00 --to '";
  const auto elsewhere = disk.run(day + disk.good("record").string() + "'");
  CHECK_MESSAGE(elsewhere.code == 0, elsewhere.told);
  CHECK_FALSE(std::filesystem::is_empty(disk.good("record")));
  const auto onto_it = disk.run(day + (disk.disk() / "record").string() + "'");
  CHECK(onto_it.code == 2);
  CHECK(onto_it.says("No space left"));
  CHECK(std::filesystem::is_empty(disk.disk() / "record"));
}

TEST_CASE("a disk that does not answer, or is gone, is not called a damaged book") {
  for (const char* how : {"dead", "gone", "works 1"}) {
    CAPTURE(how);
    const BadDisk disk;
    REQUIRE(disk.run(begin(disk)).code == 0);
    disk.is(how);
    for (const auto& command :
         {"check --book '" + disk.book() + "'", "verify '" + disk.book() + "'",
          "replay '" + disk.good("first.jsonl").string() + "' --book '" + disk.book() + "'"}) {
      CAPTURE(command);
      const auto ran = disk.run(command);
      INFO(ran.told);
      if (ran.code != 0 || std::string(how) != "works 1") CHECK(ran.code == 3);
      CHECK_FALSE(ran.says("damage"));
      CHECK_FALSE(ran.says("not a book"));
    }
    check_kept(disk, true);
  }
}

TEST_CASE("a slow disk is waited for: what is acknowledged is on it") {
  const BadDisk disk;
  const auto replay = begin(disk);
  disk.is("sync-ms 300");
  const auto from = std::chrono::steady_clock::now();
  const auto ran = disk.run(replay);
  CHECK_MESSAGE(ran.code == 0, ran.told);
  CHECK(std::chrono::steady_clock::now() - from >= std::chrono::milliseconds(300));
  check_kept(disk, true);
}
