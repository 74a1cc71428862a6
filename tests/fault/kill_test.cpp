// The program is killed while it keeps events: what it had acknowledged is in the book.
#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <random>

#include "alone.h"
#include "life.h"

using namespace rb;
using namespace rb::faults;
using samples::entry_at;
using samples::Folder;

namespace {

/// Keeps events for ever and writes a byte for each that was acknowledged.
[[noreturn]] void keep_for_ever(const std::filesystem::path& path, int told) {
  auto book = Logbook::open(path, Access::write);
  if (!book) _exit(1);
  for (int i = 1;; ++i) {
    if (!book->append(kPour, samples::note("note " + std::to_string(i)), entry_at(i))) _exit(2);
    if (write(told, "+", 1) != 1) _exit(3);
  }
}

void wait_for(int from, int acknowledged) {
  for (char byte = 0; acknowledged > 0; --acknowledged) REQUIRE(read(from, &byte, 1) == 1);
}

std::size_t count_bytes(int from) {
  std::array<char, 4096> bytes{};
  std::size_t all = 0;
  for (ssize_t size = 0; (size = read(from, bytes.data(), bytes.size())) > 0;) {
    all += static_cast<std::size_t>(size);
  }
  return all;
}

}  // namespace

TEST_CASE("a program killed at any moment has kept what it acknowledged") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  samples::book_with_pour(path);
  std::mt19937 random(20260302);
  std::size_t acknowledged = 0;
  for (int round = 0; round < 20; ++round) {
    CAPTURE(round);
    const auto before = got(got(Logbook::open(path, Access::read)).events(kPour)).size();
    std::array<int, 2> ends{};
    REQUIRE(pipe(ends.data()) == 0);
    test::wait_until_alone();
    const auto child = fork();
    if (child == 0) {
      close(ends[0]);
      keep_for_ever(path, ends[1]);
    }
    close(ends[1]);
    const auto awaited = std::uniform_int_distribution(1, 12)(random);
    wait_for(ends[0], awaited);
    usleep(std::uniform_int_distribution<useconds_t>(0, 1'000)(random));
    kill(child, SIGKILL);
    int status = 0;
    waitpid(child, &status, 0);
    REQUIRE(WIFSIGNALED(status));
    const auto told = static_cast<std::size_t>(awaited) + count_bytes(ends[0]);
    close(ends[0]);
    acknowledged += told;
    auto book = got(Logbook::open(path, Access::write));
    const auto events = got(book.events(kPour));
    const auto kept = events.size() - before;
    CHECK(kept >= told);
    CHECK(kept <= told + 1);  // the one in flight
    for (std::size_t i = 0; i < kept; ++i) {
      CHECK(std::get<event::Note>(events[before + i].what).text == "note " + std::to_string(i + 1));
    }
    CHECK(got(book.verify()).sound());
  }
  MESSAGE(acknowledged << " events acknowledged over 20 kills");
}
