// Any bytes taken for a book (what follows a line of kLog stands in the log beside it): looked
// over, listed, checked, exported and recorded, by the commands a user has.
#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

#include "cli/commands.h"
#include "must.h"
#include "scratch.h"
#include "store/book/logbook.h"

using namespace rb;
using fuzz::must;

namespace {

constexpr std::string_view kLog = "\n== log ==\n";

void look(const Path& path) {
  const auto book = Logbook::open(path, Access::read);
  if (!book) {
    must(!to_text(book.error()).empty(), "a refusal says why");
    return;
  }
  const auto pours = book->pours();
  if (!pours) return;
  for (const auto& each : *pours) (void)book->events(each.pour);
}

void record(const Path& path, const fuzz::Scratch& scratch, bool on_paper) {
  const auto book = Logbook::open(path, Access::read);
  if (!book) return;
  const auto pours = book->pours();
  if (!pours || pours->empty()) return;
  RecordWish wish;
  wish.book = path;
  wish.day = to_text(pours->front().first).substr(0, 10);
  wish.folder = scratch / "record";
  std::filesystem::create_directory(wish.folder);
  wish.formats = {"json", "csv"};
  if (on_paper) wish.formats.emplace_back("pdf");
  wish.utc_offset = "+00:00";
  (void)run_record(wish);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const fuzz::Scratch scratch;
  scratch.empty();
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto log = bytes.find(kLog);
  scratch.put("b.risebook", bytes.substr(0, log));
  if (log != std::string_view::npos) {
    scratch.put("b.risebook-wal", bytes.substr(log + kLog.size()));
  }
  const Path path = scratch / "b.risebook";
  look(path);
  (void)run_verify({.book = path, .against = {}});
  // What tells books apart by their bytes: the same book is always looked at the same way.
  const auto ones = std::count(bytes.begin(), bytes.end(), '\x01');
  CheckWish wish;
  wish.book = path;
  wish.json = ones % 2 == 1;
  (void)run_check(wish);
  // One in thirty-two also as PDF: drawing it costs more than all else.
  record(path, scratch, ones % 32 == 0);
  return 0;
}
