// Rows by number from a file that is damaged.
#include "store/book/row_reader.h"

#include <doctest/doctest.h>

#include "samples.h"
#include "store/copies/against.h"

using namespace rb;
using namespace rb::samples;

namespace {

constexpr std::size_t kPage = 4096;

std::size_t two_bytes(const std::string& bytes, std::size_t at) {
  return static_cast<unsigned char>(bytes[at]) * 256U + static_cast<unsigned char>(bytes[at + 1]);
}

/// Where the number of the last row stands on the leaf of the table that holds `text`: behind the
/// length of its cell (https://www.sqlite.org/fileformat2.html, "B-tree Cell Format").
std::size_t last_number_beside(const std::string& bytes, const std::string& text) {
  const auto page = bytes.find(text) / kPage * kPage;
  REQUIRE(bytes[page] == '\x0d');
  const auto rows = two_bytes(bytes, page + 3);
  auto at = page + two_bytes(bytes, page + 8 + 2 * (rows - 1));
  while ((bytes[at] & 0x80) != 0) ++at;
  return at + 1;
}

}  // namespace

TEST_CASE(
    "rows that a damaged file gives out of order are called damaged, not asked for for ever") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  {
    auto book = got(Logbook::create(path));
    got(book.append(PourId{"N1"}, open_event("N1"), entry_at(0)));
    got(book.append(PourId{"N1"}, note("the second", 1), entry_at(1)));
    got(book.append(PourId{"N1"}, note("the third", 2), entry_at(2)));
  }
  auto bytes = bytes_of(path);
  const auto number = last_number_beside(bytes, "the third");
  REQUIRE(bytes[number] == 3);
  bytes[number] = 1;
  std::ofstream(path, std::ios::binary) << bytes;

  auto reader = got(store::RowReader::open(path));
  const auto rows = reader.after(0, 10);
  REQUIRE(!rows);
  CHECK(rows.error().trouble == BookTrouble::damaged);
  const auto answers = store::hold_against(path, {std::string(64, 'a')});
  CHECK(!answers);
}
