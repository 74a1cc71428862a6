// A second copy of a book, and a book made again from one.
#include <fmt/format.h>

#include "cli/commands.h"
#include "store/copies/copy_book.h"

namespace rb {

Exit run_copy(const Path& book, const Path& folder) {
  const auto copy = store::copy_book(book, folder);
  if (!copy) return report(copy.error());
  fmt::print("{}\n{} events copied, looked through and synced; head {}\n", copy->file.string(),
             copy->events, copy->head_hash);
  for (const std::string& lack : copy->lacks) fmt::print("  lacking: {}\n", lack);
  return copy->lacks.empty() ? Exit::fine : Exit::findings;
}

Exit run_restore(const Path& from, const Path& to) {
  const auto restored = store::restore_book(from, to);
  if (!restored) return report(restored.error());
  fmt::print("{} events restored to {}; head {}\n", restored->events, to.string(),
             restored->head_hash);
  for (const std::string& lack : restored->lacks) fmt::print("  lacking: {}\n", lack);
  if (!restored->lacks.empty()) return Exit::findings;
  fmt::print(
      "What was kept after the copy, or after the mirror's last line, is not in it.\n"
      "Go on with one of the two books only: from here on they are told apart by what they add.\n");
  return Exit::fine;
}

}  // namespace rb
