// What is whole in a damaged book is read whatever else is broken in it.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>
#include <sqlite3.h>

#include <random>
#include <set>

#include "samples.h"
#include "store/file/file_bytes.h"
#include "store/salvage/salvage.h"
#include "store/salvage/salvaged_book.h"

using namespace rb;
using namespace rb::samples;
using store::Bytes;

namespace {

std::string long_text(int i) {
  if (i % 7 == 3) return wide(2000);
  return std::string(static_cast<std::size_t>(40 + 13 * i % 600), static_cast<char>('a' + i % 26));
}

/// Two pours, `taps` events each, some of several pages.
Logbook book_of(const fs::path& path, int taps) {
  auto book = got(Logbook::create(path));
  for (const char* pour : {"N1", "N2"}) {
    got(book.append(PourId{pour}, open_event(pour), entry_at(0)));
    for (int i = 1; i < taps; ++i) {
      got(book.append(PourId{pour}, note(long_text(i), i), entry_at(i)));
    }
  }
  return book;
}

std::string damaged(std::string bytes, std::size_t from, std::size_t count, std::mt19937& random) {
  for (std::size_t at = from; at < std::min(from + count, bytes.size()); ++at) {
    bytes[at] = static_cast<char>(random());
  }
  return bytes;
}

Bytes seen(const std::string& bytes) {
  return {reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size()};
}

std::vector<std::int64_t> numbers(const store::Salvage& found) {
  std::vector<std::int64_t> all;
  for (const auto& row : found.rows) all.push_back(row.row.seq);
  return all;
}

std::vector<std::int64_t> up_to(std::int64_t last) {
  std::vector<std::int64_t> all;
  for (std::int64_t i = 1; i <= last; ++i) all.push_back(i);
  return all;
}

}  // namespace

TEST_CASE("a sound book is salvaged whole, from the file, from the log, or from both") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  std::string file, log;
  {
    const auto book = book_of(path, 60);
    file = bytes_of(path);
    log = bytes_of(path.string() + "-wal");
    REQUIRE(log.size() > 100'000);
    CHECK(numbers(got(store::salvage(path))) == up_to(120));
  }
  const auto after = bytes_of(path);  // the log was brought in
  for (const auto& found : {store::salvage(seen(file), seen(log)), store::salvage(seen(after), {}),
                            store::salvage({}, seen(log))}) {
    CHECK(numbers(found) == up_to(120));
    CHECK(found.damaged.empty());
    CHECK(found.behind == 0);
    REQUIRE(found.head);
    CHECK(found.head->seq == 120);
    CHECK(store::last_good(found).seq == 120);
  }
  CHECK(store::salvage(seen(after), {}).name);
}

TEST_CASE("a page of nonsense costs the rows on it, and their numbers and pours are told") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  { book_of(path, 60); }
  const auto whole = bytes_of(path);
  std::mt19937 random(4);
  std::size_t lost_in_all = 0, named = 0;
  for (std::size_t page = 0; page * 4096 < whole.size(); ++page) {
    CAPTURE(page);
    const auto bytes = damaged(whole, page * 4096, 4096, random);
    const auto found = store::salvage(seen(bytes), {});
    CHECK(found.last == 120);
    CHECK(found.rows.size() + found.damaged.size() == 120);
    CHECK(found.damaged.size() < 30);
    for (const auto& row : found.rows) CHECK(store::hash_of(row.row) == row.hash);
    for (const auto& event : found.damaged) {
      ++lost_in_all;
      if (event.pour) ++named;
      if (event.pour) CHECK(event.pour->text == (event.number <= 60 ? "N1" : "N2"));
    }
    const auto again = store::book_in_memory(found);
    CHECK(again->execAndGet("SELECT count(*) FROM events").getInt() ==
          static_cast<int>(found.rows.size()));
  }
  MESSAGE(lost_in_all << " rows lost, the pour of " << named << " of them still told");
  CHECK(named > 0);
}

TEST_CASE("of a row that no longer holds number and pour are told") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  { book_of(path, 60); }
  auto bytes = bytes_of(path);
  const auto at = bytes.find(long_text(20));
  REQUIRE(at != std::string::npos);
  bytes[at + 5] ^= '\x01';
  const auto found = store::salvage(seen(bytes), {});
  REQUIRE(found.damaged.size() == 1);
  CHECK(found.damaged[0].number == 21);
  CHECK(found.damaged[0].id.text == found.tag + "-21");
  CHECK_FALSE(found.damaged[0].missing);
  CHECK(found.damaged[0].pour == PourId{"N1"});
  CHECK(store::last_good(found).seq == 20);
}

TEST_CASE("a book whose first page is gone is salvaged, whatever its size of page") {
  for (const int page_size : {512, 1024, 4096, 65536}) {
    CAPTURE(page_size);
    const Folder folder;
    const auto path = folder / "book.risebook";
    { book_of(path, 40); }
    {
      SQLite::Database bare(path.string(), SQLite::OPEN_READWRITE);
      bare.exec("PRAGMA journal_mode = DELETE");
      bare.exec("PRAGMA page_size = " + std::to_string(page_size));
      bare.exec("VACUUM");
    }
    auto bytes = bytes_of(path);
    for (std::size_t at = 0; at < std::min<std::size_t>(static_cast<std::size_t>(page_size), 4096);
         ++at)
      bytes[at] = '\0';
    const auto found = store::salvage(seen(bytes), {});
    CHECK(numbers(found).size() >= 79);
    CHECK(found.last >= 79);
  }
}

TEST_CASE("a mutated book is salvaged without reading beyond its bytes, and no row is made up") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  std::string file, log;
  std::set<std::string> lines;
  {
    const auto book = book_of(path, 12);
    file = bytes_of(path);
    log = bytes_of(path.string() + "-wal");
    for (const char* pour : {"N1", "N2"}) {
      for (const auto& event : got(book.events(PourId{pour}))) {
        auto plain = event;
        plain.id = {};
        plain.entry.reset();
        lines.insert(to_line(plain));
      }
    }
  }
  std::mt19937 random(20260302);
  const char* given = std::getenv("RISEBOOK_ROUNDS");
  const int rounds = given ? std::atoi(given) : 300;
  MESSAGE("seed 20260302, rounds " << rounds);
  for (int round = 0; round < rounds; ++round) {
    CAPTURE(round);
    auto f = file, l = log;
    for (auto* bytes : {&f, &l}) {
      const auto changes = random() % 40;
      for (unsigned i = 0; i < changes; ++i)
        (*bytes)[random() % bytes->size()] = static_cast<char>(random());
      if (random() % 4 == 0) bytes->resize(random() % bytes->size());
      if (random() % 4 == 0) {  // a stretch moved elsewhere
        const auto from = random() % bytes->size(), to = random() % bytes->size();
        const auto count = std::min({std::size_t{5000}, bytes->size() - from, bytes->size() - to});
        std::copy_n(bytes->begin() + static_cast<std::ptrdiff_t>(from), count,
                    std::vector<char>(count).begin());
        std::copy_backward(bytes->begin() + static_cast<std::ptrdiff_t>(from),
                           bytes->begin() + static_cast<std::ptrdiff_t>(from + count),
                           bytes->begin() + static_cast<std::ptrdiff_t>(to + count));
      }
      if (bytes->empty()) *bytes = "x";
    }
    // In buffers of their own size, so that a tool that watches memory sees a byte too far.
    const std::vector<unsigned char> exact_file(f.begin(), f.end()), exact_log(l.begin(), l.end());
    const auto found = store::salvage(Bytes{exact_file}, Bytes{exact_log});
    for (const auto& row : found.rows) CHECK(lines.contains(row.row.line));
  }
}

TEST_CASE("pages of nonsense are salvaged to nothing") {
  std::mt19937 random(7);
  for (int round = 0; round < 60; ++round) {
    std::vector<unsigned char> bytes(random() % 40'000);
    for (auto& byte : bytes) {
      // Much of what the parser looks for, in no order.
      constexpr unsigned char kLikely[] = {0, 1, 3, 4, 5, 11, 12, 13, 0x4c, 0x4c, 0x17, 0x81};
      byte =
          random() % 2 ? kLikely[random() % sizeof kLikely] : static_cast<unsigned char>(random());
    }
    const auto found = store::salvage(Bytes{bytes}, Bytes{bytes});
    CHECK(found.rows.empty());
  }
}
