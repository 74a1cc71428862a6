// A book is looked at before it is written; one that fails is read, and says why.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include <atomic>
#include <chrono>
#include <fstream>
#include <thread>

#include "samples.h"
#include "store/keep/rest_look.h"

using namespace rb;
using namespace rb::samples;

namespace {

fs::path book_of(const Folder& folder, int taps, std::size_t letters = 5) {
  auto path = folder / "book.risebook";
  auto book = book_with_pour(path);
  for (int i = 1; i < taps; ++i) {
    got(book.append(PourId{"N1"}, note(std::string(letters, 'x'), i), entry_at(i)));
  }
  return path;
}

void tamper(const fs::path& path, const char* sql) {
  SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
  std::vector<std::string> drop, put_back;
  SQLite::Statement triggers(bare, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
  while (triggers.executeStep()) {
    drop.push_back("DROP TRIGGER " + triggers.getColumn(0).getString());
    put_back.push_back(triggers.getColumn(1).getString());
  }
  triggers.reset();
  for (const auto& each : drop) bare.exec(each);
  bare.exec(sql);
  for (const auto& each : put_back) bare.exec(each);
}

void set_byte(const fs::path& path, std::size_t at, char to) {
  std::fstream file(path, std::ios::binary | std::ios::in | std::ios::out);
  file.seekp(static_cast<std::streamoff>(at));
  file.put(to);
}

/// The last cell of a leaf of the index of pours is not counted any more.
void shorten_an_index(const fs::path& path) {
  constexpr std::size_t kPage = 4096;
  constexpr char kIndexLeaf = 0x0A;  // https://www.sqlite.org/fileformat.html, section 1.6
  const auto bytes = bytes_of(path);
  for (std::size_t page = kPage; page + kPage <= bytes.size(); page += kPage) {
    const int cells = static_cast<unsigned char>(bytes[page + 3]) * 256 +
                      static_cast<unsigned char>(bytes[page + 4]);
    if (bytes[page] != kIndexLeaf || cells < 50 || cells % 256 == 0) continue;
    return set_byte(path, page + 4, static_cast<char>(bytes[page + 4] - 1));
  }
  FAIL("no leaf of an index");
}

std::optional<std::vector<std::string>> found_by(store::RestLook& look) {
  for (int i = 0; i < 1000; ++i) {
    if (auto found = look.take()) return found;
    std::this_thread::sleep_for(std::chrono::milliseconds{20});
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("a book whose end does not hold is read, not written") {
  for (const char* sql : {
           "UPDATE events SET line = replace(line, 'xxx', 'yyy') WHERE seq = 20",
           "UPDATE events SET kept = 0 WHERE seq = 2",
           "UPDATE events SET hash = zeroblob(32) WHERE seq = 12",
           "DELETE FROM events WHERE seq = 20",
           "DELETE FROM events WHERE seq = 10",
           "DELETE FROM events WHERE seq = 1",
           "DELETE FROM events",
           "UPDATE head SET hash = zeroblob(32)",
           "DELETE FROM head",
           "UPDATE book SET created = created + 1",
       }) {
    CAPTURE(std::string(sql));
    const Folder folder;
    const auto path = book_of(folder, 20);
    tamper(path, sql);
    const auto before = bytes_of(path);
    {
      auto book = got(Logbook::open(path, Access::write));
      CHECK_FALSE(book.writable());
      REQUIRE(book.read_only_reason());
      CHECK(book.read_only_reason()->what.text().find("damaged") != std::string::npos);
      const auto kept = book.append(PourId{"N1"}, note("more"), entry_at(30));
      REQUIRE_FALSE(kept);
      CHECK(to_text(kept.error()).find("damaged") != std::string::npos);
    }
    CHECK(bytes_of(path) == before);
  }
}

TEST_CASE("a book whose rules were altered is read, not written, and loses nothing of it") {
  const Folder folder;
  const auto path = book_of(folder, 20);
  SQLite::Database(path.string(), SQLite::OPEN_READWRITE).exec("DROP TRIGGER events_never_go");
  const auto book = got(Logbook::open(path, Access::write));
  CHECK_FALSE(book.writable());
  REQUIRE(book.read_only_reason());
  CHECK_FALSE(book.damage());
  CHECK(got(book.events(PourId{"N1"})).size() == 20);
}

TEST_CASE("a small book with a bad page is found out on opening, and what is whole is read") {
  const Folder folder;
  const auto path = book_of(folder, 200, 300);
  auto bytes = bytes_of(path);
  for (std::size_t i = 0; i < 4096; i += 3) bytes[bytes.size() / 2 / 4096 * 4096 + i] ^= '\x5a';
  std::ofstream(path, std::ios::binary) << bytes;
  const auto book = got(Logbook::open(path, Access::write));
  CHECK_FALSE(book.writable());
  REQUIRE(book.damage());
  const auto read = got(book.read(PourId{"N1"}));
  CHECK(read.events.size() + read.damaged.size() == 200);
  CHECK(read.events.size() > 150);
  CHECK(bytes_of(path) == bytes);
}

TEST_CASE("a sound book is written after the look, and the look tells whether it saw all of it") {
  const Folder folder;
  const auto path = book_of(folder, 100);
  const auto book = got(Logbook::open(path, Access::write));
  CHECK(book.writable());
  CHECK_FALSE(book.read_only_reason());
  CHECK(book.looked_through());
  CHECK_FALSE(got(book.look_through()));
}

TEST_CASE("what rests on one pour is verified without the others") {
  const Folder folder;
  const auto path = book_of(folder, 20);
  {
    auto book = got(Logbook::open(path, Access::write));
    got(book.append(PourId{"N2"}, open_event("N2"), entry_at(40)));
    for (int i = 0; i < 100; ++i) got(book.append(PourId{"N2"}, note("x"), entry_at(41)));
  }
  const auto verified = [&](const char* pour) {
    return got(got(Logbook::open(path, Access::read)).verify(std::vector{PourId{pour}}));
  };
  CHECK(verified("N1").sound());
  CHECK(verified("N1").events == 121);
  CHECK_FALSE(verified("N1").looked.empty());
  tamper(path, "UPDATE events SET line = replace(line, 'xxx', 'yyy') WHERE seq = 10");
  CHECK_FALSE(verified("N1").sound());
  CHECK(verified("N2").sound());
  CHECK(verified("N1").first_bad->text.ends_with("-10"));
}

TEST_CASE("a small book with a damaged event far back is read, not written") {
  const Folder folder;
  const auto path = book_of(folder, 200);
  tamper(path, "UPDATE events SET line = replace(line, 'xxx', 'yyy') WHERE seq = 10");
  const auto book = got(Logbook::open(path, Access::write));
  CHECK_FALSE(book.writable());
  REQUIRE(book.damage());
  REQUIRE(book.damage()->events.size() == 1);
  CHECK(book.damage()->events[0].number == 10);
  CHECK(got(book.read(PourId{"N1"})).events.size() == 199);
}

TEST_CASE("a book whose first bytes forbid writing says so on opening, and its pours are read") {
  const Folder folder;
  const auto path = book_of(folder, 20);
  set_byte(path, 18, 3);
  {
    const auto book = got(Logbook::open(path, Access::write));
    CHECK_FALSE(book.writable());
    REQUIRE(book.read_only_reason());
    CHECK(book.read_only_reason()->trouble == BookTrouble::damaged);
    CHECK(got(book.events(PourId{"N1"})).size() == 20);
    CHECK_FALSE(got(book.verify()).sound());
  }
  CHECK(got(Logbook::open(path, Access::read)).damage() == std::nullopt);
  set_byte(path, 18, 2);
  CHECK(got(Logbook::open(path, Access::write)).writable());
}

TEST_CASE("what a glance at a long book passes over is found by the long look, at rest") {
  const Folder folder;
  const auto path = book_of(folder, 700, 2000);
  REQUIRE(fs::file_size(path) > (1U << 20U));
  SUBCASE("an event far back") {
    tamper(path, "UPDATE events SET line = replace(line, 'xxx', 'yyy') WHERE seq = 10");
  }
  SUBCASE("a page of an index that tells of a row less") {
    shorten_an_index(path);
  }
  SUBCASE("nothing") {
    store::RestLook look(path, {}, Seconds{0.01});
    const auto found = found_by(look);
    REQUIRE(found);
    CHECK(found->empty());
    return;
  }
  auto book = got(Logbook::open(path, Access::write));
  if (!book.writable()) return;  // seen at a glance all the same
  std::atomic<int> woken{0};
  store::RestLook look(
      path, [&] { ++woken; }, Seconds{0.01});
  const auto found = found_by(look);
  REQUIRE(found);
  CHECK_FALSE(found->empty());
  CHECK(woken == 1);
  CHECK_FALSE(look.take());
}

TEST_CASE("the long look gives way to taps and comes back at rest") {
  const Folder folder;
  const auto path = book_of(folder, 50);
  store::RestLook look(path, {}, Seconds{0.3});
  for (int i = 0; i < 50; ++i) {
    look.tapped();
    std::this_thread::sleep_for(std::chrono::milliseconds{10});
    CHECK_FALSE(look.take());
  }
  CHECK(found_by(look));
}
