// Temperatures of hardening concrete out of a logger's CSV file. Errors name line and column.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <sstream>
#include <string_view>

#include "app/book_pours.h"
#include "app/device.h"
#include "base/moment.h"
#include "cli/commands.h"
#include "pour/log/event.h"
#include "pour/log/fold.h"
#include "store/book/logbook.h"
#include "store/file/entry_now.h"

namespace rb {

namespace {

constexpr std::size_t kNone = static_cast<std::size_t>(-1);

struct Columns {
  std::size_t time = kNone, temp = kNone, z = kNone, x = kNone;
  bool fahrenheit = false;
};

struct Reading {
  std::size_t line = 0;
  Moment at{};
  event::ConcreteTemp what;
};

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) {
    text.remove_suffix(1);
  }
  if (text.size() >= 2 && text.front() == '"' && text.back() == '"') {
    text = text.substr(1, text.size() - 2);
  }
  return text;
}

std::vector<std::string_view> cells_of(std::string_view line) {
  std::vector<std::string_view> cells;
  for (;;) {
    const auto comma = line.find(',');
    cells.push_back(trimmed(line.substr(0, comma)));
    if (comma == std::string_view::npos) return cells;
    line = line.substr(comma + 1);
  }
}

Failed bad(const Path& file, std::size_t line, const char* column, std::string what,
           std::string remedy) {
  return Failed{Error{Error::Kind::input,
                      fmt::format("{} line {}, column {}", file.string(), line, column),
                      std::move(what), std::move(remedy)}};
}

Failed whole(const Path& file, const char* what, const char* remedy) {
  return Failed{Error{Error::Kind::input, file.string(), what, remedy}};
}

Result<Columns> columns_of(const Path& file, std::string_view header, std::size_t line) {
  Columns columns;
  const auto cells = cells_of(header);
  const char* const kKnown =
      "Name them time, temp_c or temp_f, and z_m and x_m where there are any";
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string name{cells[i]};
    std::size_t* place = nullptr;
    if (name == "time") place = &columns.time;
    if (name == "temp_c" || name == "temp_f") place = &columns.temp;
    if (name == "z_m") place = &columns.z;
    if (name == "x_m") place = &columns.x;
    if (place == nullptr) {
      return bad(file, line, name.c_str(), "is a column that is not known", kKnown);
    }
    if (*place != kNone) return bad(file, line, name.c_str(), "is there twice", kKnown);
    *place = i;
    if (name == "temp_f") columns.fahrenheit = true;
  }
  if (columns.time == kNone) return bad(file, line, "time", "is missing", kKnown);
  if (columns.temp == kNone) return bad(file, line, "temp_c or temp_f", "is missing", kKnown);
  return columns;
}

// A number of a cell within bounds.
Result<double> number_of(const Path& file, std::size_t line, const char* column,
                         std::string_view cell, double least, double most) {
  double value = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
  if (error != std::errc{} || end != cell.data() + cell.size()) {
    return bad(file, line, column, fmt::format("is \"{}\", no number", cell),
               "Give a plain number with a decimal point");
  }
  if (!(value >= least && value <= most)) {
    return bad(file, line, column, fmt::format("is {:g}", value),
               fmt::format("{:g} to {:g} was expected", least, most));
  }
  return value;
}

Result<Reading> reading_of(const Path& file, std::size_t line, std::string_view text,
                           const Columns& columns, const ElementId& element) {
  const auto cells = cells_of(text);
  const auto cell = [&](std::size_t i) { return i < cells.size() ? cells[i] : std::string_view{}; };
  Reading reading{line, {}, {element, {}, {}, {}}};
  const std::string time{cell(columns.time)};
  const auto at = parse_moment(time);
  if (!at) {
    return bad(file, line, "time", fmt::format("is \"{}\"", time),
               "Give date, time and zone, such as 2026-03-02T14:30:00Z or "
               "2026-03-02T09:30:00-05:00");
  }
  reading.at = *at;
  const bool f = columns.fahrenheit;
  const auto temp =
      number_of(file, line, f ? "temp_f" : "temp_c", cell(columns.temp), -40, f ? 212 : 100);
  if (!temp) return Failed{temp.error()};
  reading.what.temp = f ? fahrenheit(*temp) : celsius(*temp);
  if (!cell(columns.z).empty()) {
    const auto z = number_of(file, line, "z_m", cell(columns.z), 0, 200);
    if (!z) return Failed{z.error()};
    reading.what.z = metres(*z);
  }
  if (!cell(columns.x).empty()) {
    const auto x = number_of(file, line, "x_m", cell(columns.x), 0, 500);
    if (!x) return Failed{x.error()};
    reading.what.x = metres(*x);
  }
  return reading;
}

Result<std::vector<Reading>> read_temps(const Path& file, const ElementId& element) {
  std::ifstream in{file, std::ios::binary};
  std::ostringstream all;
  if (!in || (in.peek() != std::ifstream::traits_type::eof() && !(all << in.rdbuf()))) {
    return whole(file, "cannot be read", "Give the CSV file of a temperature logger");
  }
  std::string content = all.str();
  if (content.starts_with("\xEF\xBB\xBF")) content.erase(0, 3);
  std::string_view text = content;
  std::optional<Columns> columns;
  std::vector<Reading> readings;
  for (std::size_t line = 1; !text.empty(); ++line) {
    const auto end = text.find('\n');
    const std::string_view one = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    if (trimmed(one).empty()) continue;
    if (!columns) {
      const auto named = columns_of(file, one, line);
      if (!named) return Failed{named.error()};
      columns = *named;
      continue;
    }
    auto reading = reading_of(file, line, one, *columns, element);
    if (!reading) return Failed{reading.error()};
    readings.push_back(std::move(*reading));
  }
  if (readings.empty()) {
    return whole(file, "holds no reading",
                 "Give a line that names the columns, then one for each reading");
  }
  return readings;
}

// What the pour has of the same place and moment; null: nothing.
const ConcreteTempState* known(const PourState& state, const Reading& reading) {
  const auto same = std::find_if(
      state.concrete_temps.begin(), state.concrete_temps.end(), [&](const ConcreteTempState& t) {
        return t.what.element == reading.what.element && t.what.z == reading.what.z &&
               t.what.x == reading.what.x &&
               std::chrono::abs(between(state.moment(t.at), reading.at)) < Seconds{0.001};
      });
  return same == state.concrete_temps.end() ? nullptr : &*same;
}

struct ToKeep {
  std::vector<Tapped> taps;
  std::size_t there = 0;  ///< in the pour already
};

// Judges every reading as it would stand in the pour.
Result<ToKeep> to_keep(PourState state, const std::vector<Reading>& readings,
                       const TempsWish& wish) {
  ToKeep keep;
  keep.taps.reserve(readings.size());
  const Entry entry = script_entry(entry_now());
  for (const Reading& reading : readings) {
    if (reading.at < state.zero) {
      return bad(wish.file, reading.line, "time", "is before the pour was opened",
                 "Check date and zone");
    }
    if (const ConcreteTempState* there = known(state, reading)) {
      if (std::abs(there->what.temp.degrees - reading.what.temp.degrees) < 1e-9) {
        ++keep.there;
        continue;
      }
      return bad(wish.file, reading.line, "temp",
                 fmt::format("is {:g} degC, but the pour has {:g} degC there and then",
                             reading.what.temp.degrees, there->what.temp.degrees),
                 "Correct the one that is wrong");
    }
    Event event{{}, reading.at, PersonId{wish.by}, reading.what, {}, {}, {}};
    if (const auto may = admit(state, event); !may) {
      return Failed{Error{Error::Kind::input,
                          fmt::format("{} line {}", wish.file.string(), reading.line),
                          to_text(may.error()),
                          {}}};
    }
    keep.taps.push_back({PourId{wish.pour}, std::move(event), entry, {}});
  }
  return keep;
}

}  // namespace

Exit run_temps(const TempsWish& wish) {
  const auto readings = read_temps(wish.file, ElementId{wish.element});
  if (!readings) return report(readings.error());
  auto book = Logbook::open(wish.book, Access::write);
  if (!book) return report(book.error());
  if (const auto& why = book->read_only_reason()) return report(*why);
  const auto chosen = chosen_pours(*book, wish.pour);
  if (!chosen) return report(chosen.error());
  const auto read = read_pour(*book, chosen->front());
  if (!read) return report(read.error());
  if (!read->state) return report(no_plan(book->file(), *read).value());
  if (read->state->plan->find(ElementId{wish.element}) == nullptr) {
    return report({Error::Kind::input, "--element", "the plan has no " + wish.element, {}});
  }
  auto keep = to_keep(*read->state, *readings, wish);
  if (!keep) return report(keep.error());
  for (Tapped& tap : keep->taps) tap.kept = tap.entry.wall;
  if (!keep->taps.empty()) {
    if (const auto kept = book->append_all(keep->taps); !kept) return report(kept.error());
  }
  fmt::print("Pour {}, {}: {} temperatures kept, {} were there already\n", wish.pour, wish.element,
             keep->taps.size(), keep->there);
  return Exit::fine;
}

}  // namespace rb
