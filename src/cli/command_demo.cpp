#include <fmt/format.h>
#include <risebook_demo.h>

#include <cerrno>
#include <system_error>

#include "app/book_pours.h"
#include "app/device.h"
#include "base/unfinished.h"
#include "check/check.h"
#include "cli/write_day.h"
#include "pour/log/script.h"
#include "store/file/entry_now.h"

namespace rb {

namespace {

std::string_view demo_script() {
  const auto* begin = reinterpret_cast<const char*>(embedded::rb_demo_pour);
  const auto* end = reinterpret_cast<const char*>(embedded::rb_demo_pour_end);
  return {begin, static_cast<std::size_t>(end - begin)};
}

// A book that stands is never written over: a second demo gets a number.
Path fresh_name(const Path& folder) {
  Path name = folder / "demo.risebook";
  for (int n = 2; std::filesystem::exists(std::filesystem::symlink_status(name)); ++n) {
    name = folder / fmt::format("demo-{}.risebook", n);
  }
  return name;
}

}  // namespace

Exit run_demo(const Path& folder) {
  const auto script = read_script(demo_script(), "the demo pour");
  if (!script) return report(script.error());
  if (!make_folders(folder, 0777)) {
    return report({Error::Kind::input,
                   folder.string(),
                   "cannot be made: " + std::generic_category().message(errno),
                   {}});
  }
  auto book = Logbook::create(fresh_name(folder));
  if (!book) return report(book.error());
  (void)sign_heads(*book, data_folder());  // unsigned is told by verify
  if (const auto kept = book->append_script(*script, script_entry(entry_now())); !kept) {
    return report(kept.error());
  }
  const auto read = read_pour(*book, script->pour);
  if (!read) return report(read.error());
  if (!read->state) return report(no_plan(book->file(), *read).value());
  const PourState& state = *read->state;
  const CheckReport checked = check(state, AsOf::end(state));
  fmt::print("{}", to_text(state, checked));
  const std::chrono::minutes utc{0};
  const auto written = write_day(*book, plain_day(*parse_day(day_text(state.zero)), utc), folder,
                                 {Format::pdf, Format::csv, Format::xlsx});
  if (!written) return report(written.error());
  fmt::print("\nBook   {}\n", book->file().string());
  for (const Path& path : written->files) fmt::print("Record {}\n", path.string());
  return checked.clean() ? Exit::fine : Exit::findings;
}

}  // namespace rb
