// Commands that must not lend a wrong thing a good face.
#include <doctest/doctest.h>

#include <fstream>
#include <iterator>

#include "cli/calc.h"
#include "cli/commands.h"
#include "temp_folder.h"

using namespace rb;

namespace {

const std::string kDemo = std::string(RISEBOOK_SOURCE_DIR) + "/assets/demo-pour.jsonl";

std::string bytes_of(const Path& path) {
  std::ifstream in{path, std::ios::binary};
  return {std::istreambuf_iterator<char>(in), {}};
}

WaitWish wait() {
  WaitWish wish;
  wish.placed = "3 m";
  wish.rise = "1.5 m/h";
  wish.low = "0.4 m";
  wish.high = "1.6 m";
  wish.rating = "50 kPa";
  wish.initial_set = "5 h";
  return wish;
}

}  // namespace

TEST_CASE("the record of a book that was changed behind its back says so") {
  const test::TempFolder folder;
  const Path book = folder.path / "a.risebook";
  REQUIRE(run_replay(kDemo, book) == Exit::fine);
  RecordWish wish;
  wish.book = book;
  wish.day = "2026-03-02";
  wish.folder = folder.path / "good";
  wish.formats = {"csv"};
  wish.utc_offset = "+00:00";
  std::filesystem::create_directory(wish.folder);
  CHECK(run_record(wish) == Exit::fine);
  const auto told = [&] {  // of the book, in the file that tells of it
    for (const auto& entry : std::filesystem::directory_iterator{wish.folder}) {
      if (entry.path().string().ends_with("-book.csv")) return bytes_of(entry.path());
    }
    return std::string{};
  };
  CHECK(told().find("short_code") != std::string::npos);
  CHECK(told().find("does not hold") == std::string::npos);
  // A letter of a note changed in the file itself.
  std::string bytes = bytes_of(book);
  const auto at = bytes.find("form aligned and braced");
  REQUIRE(at != std::string::npos);
  bytes[at] = 'F';
  std::ofstream{book, std::ios::binary} << bytes;
  wish.folder = folder.path / "bad";
  std::filesystem::create_directory(wish.folder);
  (void)run_record(wish);
  CHECK(told().find("The book does not hold; faults found in it: ") != std::string::npos);
  wish.folder = folder.path / "malo";
  wish.language = "es";
  std::filesystem::create_directory(wish.folder);
  (void)run_record(wish);
  CHECK(told().find("El libro no cuadra; fallas halladas en \u00e9l: ") != std::string::npos);
  CHECK(told().find("does not hold") == std::string::npos);
}

TEST_CASE("a misspelt command makes no book") {
  const test::TempFolder folder;
  ScreensWish wish;
  wish.book = folder.path / "chekc";
  CHECK(run_screens(wish) == Exit::usage);
  CHECK(std::filesystem::is_empty(folder.path));
}

TEST_CASE("a script without a line holds no pour, and says so") {
  const test::TempFolder folder;
  const Path script = folder.path / "empty.jsonl";
  std::ofstream{script};
  CHECK(run_replay(script, folder.path / "a.risebook") == Exit::usage);
  CHECK_FALSE(std::filesystem::exists(folder.path / "a.risebook"));
}

TEST_CASE("the wait before a row runs is not worked out from what cannot be") {
  CHECK(calc_wait(wait()) != Exit::usage);
  for (const auto& [field, text] :
       std::initializer_list<std::pair<std::string WaitWish::*, const char*>>{
           {&WaitWish::since, "-1 h"},
           {&WaitWish::low, "1.7 m"},
           {&WaitWish::rating, "-50 kPa"},
           {&WaitWish::unit_weight, "0 kN/m3"}}) {
    const auto& tried = text;
    CAPTURE(tried);
    WaitWish wish = wait();
    wish.*field = text;
    CHECK(calc_wait(wish) == Exit::usage);
  }
}
