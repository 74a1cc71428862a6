// A book too long to be looked at whole on opening: what its index says is held against its events
// as far as what is read goes.
#include <SQLiteCpp/SQLiteCpp.h>
#include <doctest/doctest.h>

#include <map>
#include <random>

#include "../store/samples.h"
#include "soak.h"
#include "store/book/opening_look.h"

using namespace rb;
using namespace rb::samples;

namespace {

const std::vector<PourId> kPours{PourId{"N1"}, PourId{"N2"}, PourId{"N3"}};

void put(const fs::path& path, std::size_t at, char byte) {
  std::fstream open(path, std::ios::in | std::ios::out | std::ios::binary);
  open.seekp(static_cast<std::streamoff>(at));
  open.put(byte);
}

std::vector<std::size_t> pages_of(const fs::path& path, const char* name) {
  const SQLite::Database bare(path.string(), SQLite::OPEN_READONLY);
  SQLite::Statement pages(bare, "SELECT pageno FROM dbstat WHERE name = ?");
  pages.bind(1, name);
  std::vector<std::size_t> found;
  while (pages.executeStep()) {
    found.push_back(static_cast<std::size_t>(pages.getColumn(0).getInt64()));
  }
  return found;
}

}  // namespace

TEST_CASE(
    "a byte changed in the entries of a longer book's index costs no pour an event in silence") {
  const Folder folder;
  const auto path = folder / "book.risebook";
  std::map<PourId, std::size_t> truth;
  {
    auto book = got(Logbook::create(path));
    for (const auto& pour : kPours) got(book.append(pour, open_event(pour.text), entry_at(0)));
    const auto tap = [&](const PourId& pour, std::size_t letters) {
      got(book.append(pour, note(wide(letters), 1), entry_at(1)));
    };
    for (int i = 1; i < 40; ++i) {
      for (const auto& pour : kPours) tap(pour, 20);
    }
    for (int i = 0; i < 160; ++i) tap(kPours[2], 1900);
    for (const auto& pour : kPours) truth[pour] = got(book.events(pour)).size();
    REQUIRE(book.empty_log());
  }
  REQUIRE(fs::file_size(path) > store::kTinyBook);
  const auto whole = bytes_of(path);
  std::mt19937 random(20260310);
  std::size_t looks = 0, different = 0;
  for (const auto page : pages_of(path, "events_of_pour")) {
    // Behind the page's own heading: a count of entries changed there is told by verify alone.
    for (std::size_t in = 12; in < 4096; in += soak::kEvery * (1 + random() % 9)) {
      const auto at = (page - 1) * 4096 + in;
      const auto to = static_cast<char>(in % 2 ? whole[at] ^ 1 : static_cast<int>(random()));
      if (to == whole[at]) continue;
      CAPTURE(page);
      CAPTURE(in);
      CAPTURE(static_cast<int>(to));
      put(path, at, to);
      {
        const auto book = got(Logbook::open(path, Access::read));
        for (const auto& pour : kPours) {
          const auto read = got(book.read(pour));
          CHECK(read.events.size() == truth[pour]);
          CHECK(read.damaged.empty());
          const auto events = book.events(pour);
          if (events) CHECK(events->size() == truth[pour]);
          if (!events) ++different;
        }
      }
      put(path, at, whole[at]);
      ++looks;
    }
  }
  MESSAGE(looks << " bytes changed, " << different << " pours read past the index");
  CHECK(different > 100 / soak::kEvery);
  const auto book = got(Logbook::open(path, Access::read));
  for (const auto& pour : kPours) CHECK(got(book.events(pour)).size() == truth[pour]);
}
