// Commands that move whole pours in and out of a book.
#include <fmt/format.h>

#include <fstream>
#include <sstream>

#include "app/book_pours.h"
#include "app/device.h"
#include "cli/commands.h"
#include "pour/log/script.h"
#include "store/book/logbook.h"
#include "store/file/entry_now.h"

namespace rb {

Exit run_replay(const Path& script_file, const Path& book_file) {
  std::ifstream in{script_file, std::ios::binary};
  std::ostringstream text;
  if (!in || (in.peek() != std::ifstream::traits_type::eof() && !(text << in.rdbuf()))) {
    return report({Error::Kind::input, script_file.string(), "cannot be read",
                   "Give a pour script (JSON Lines)"});
  }
  const auto script = read_script(text.str(), script_file.string());
  if (!script) return report(script.error());
  auto book = Logbook::open_or_create(book_file);
  if (!book) return report(book.error());
  if (const auto may = sign_heads(*book, data_folder()); !may) {
    fmt::print(stderr, "{}\n", to_text(may.error()));
  }
  const auto kept = book->append_script(*script, script_entry(entry_now()));
  if (!kept) return report(kept.error());
  fmt::print("Pour {}: {} events kept in {}\n", script->pour.text, kept->size(),
             book_file.string());
  return Exit::fine;
}

Exit run_script(const Path& book_file, const std::string& pour) {
  const auto book = Logbook::open(book_file, Access::read);
  if (!book) return report(book.error());
  const auto chosen = chosen_pours(*book, pour);
  if (!chosen) return report(chosen.error());
  const auto found = book->read(chosen->front());
  if (!found) return report(found.error());
  // A script has no comments: what it lacks is said beside it.
  fmt::print("{}", write_script(found->events));
  const auto read = read_pour(*book, chosen->front());
  if (!read) return report(read.error());
  return tell_unread(book->file(), *read) ? Exit::book : Exit::fine;
}

}  // namespace rb
