// LibreOffice gives of the workbook what the model gives: each table's cells, values and texts.
// Skipped, and said so, only where soffice is not installed (Debian: libreoffice-calc-nogui).
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <cstdlib>
#include <sstream>

#include "../fault/soak.h"
#include "../record/sample.h"
#include "../record/temp_folder.h"
#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "record/form/xlsx.h"
#include "record/told/shown.h"

using namespace rb;
namespace fs = std::filesystem;

namespace {

struct Read {
  std::string kind, value, text;  ///< "float", its value in full, and what is seen
};
using Sheet = std::vector<std::vector<Read>>;

// A flat OpenDocument file (ISO/IEC 26300, from memory), tag by tag: as much as its tables need.
class FlatReader {
 public:
  explicit FlatReader(const std::string& text) : text_(text) {}

  std::vector<Sheet> sheets() {
    while (next()) {
      if (is("table:table")) {
        all_.emplace_back();
      } else if (is("table:table-row")) {
        begin_row();
      } else if (is("table:table-cell") || is("table:covered-table-cell")) {
        begin_cell();
      } else if (inside_ && is("text:p")) {
        if (paragraphs_++ > 0) put("\n");
      } else if (inside_ && is("text:line-break")) {
        put("\n");
      } else if (inside_ && is("text:s")) {
        put(std::string(static_cast<std::size_t>(count("text:c")), ' '));
      } else if (tag_ == "/table:table-cell") {
        end_cell();
      } else if (tag_ == "/table:table-row" || (tag_ == "table:table-row" && empty_)) {
        end_row();
      }
    }
    return std::move(all_);
  }

 private:
  static constexpr int kMostAlike = 300;  // rows and columns to the sheet's end are empty

  [[nodiscard]] bool is(const char* name) const { return tag_ == name; }

  bool next() {
    const auto open = text_.find('<', at_);
    if (open == std::string::npos) return false;
    if (inside_ && paragraphs_ > 0 && tag_ != "/text:p") put(plain(text_.substr(at_, open - at_)));
    const auto close = text_.find('>', open);
    if (close == std::string::npos) return false;
    const std::string whole = text_.substr(open + 1, close - open - 1);
    tag_ = whole.substr(0, whole.find_first_of(" \n/", 1));
    more_ = whole;
    empty_ = whole.back() == '/';
    at_ = close + 1;
    return true;
  }
  [[nodiscard]] std::string attribute(const std::string& name) const {
    const auto from = more_.find(" " + name + "=\"");
    if (from == std::string::npos) return {};
    const auto begin = from + name.size() + 3;
    return plain(more_.substr(begin, more_.find('"', begin) - begin));
  }
  [[nodiscard]] int count(const std::string& name) const {
    const std::string number = attribute(name);
    return number.empty() ? 1 : std::atoi(number.c_str());
  }
  static std::string plain(std::string text) {
    for (const auto& [sign, is] :
         std::vector<std::pair<std::string, std::string>>{{"&lt;", "<"},
                                                          {"&gt;", ">"},
                                                          {"&quot;", "\""},
                                                          {"&apos;", "'"},
                                                          {"&#10;", "\n"},
                                                          {"&amp;", "&"}}) {
      for (auto at = text.find(sign); at != std::string::npos; at = text.find(sign, at + is.size()))
        text.replace(at, sign.size(), is);
    }
    return text;
  }

  void begin_row() {
    row_.clear();
    alike_ = count("table:number-rows-repeated");
  }
  void end_row() {
    if (all_.empty()) return;
    for (int i = 0; i < std::min(alike_, kMostAlike); ++i) all_.back().push_back(row_);
    row_.clear();
  }
  void begin_cell() {
    cell_ = {attribute("office:value-type"), attribute("office:value"), {}};
    if (cell_.kind == "date") cell_.value = attribute("office:date-value");
    cells_ = std::min(count("table:number-columns-repeated"), kMostAlike);
    inside_ = !empty_;
    paragraphs_ = 0;
    if (empty_) row_.insert(row_.end(), static_cast<std::size_t>(cells_), cell_);
  }
  void end_cell() {
    if (!inside_) return;
    inside_ = false;
    row_.insert(row_.end(), static_cast<std::size_t>(cells_), cell_);
  }
  void put(const std::string& text) { cell_.text += text; }

  const std::string& text_;
  std::size_t at_ = 0;
  std::string tag_, more_;
  bool empty_ = false, inside_ = false;
  int paragraphs_ = 0, alike_ = 1, cells_ = 1;
  Read cell_;
  std::vector<Read> row_;
  std::vector<Sheet> all_;
};

struct Named {
  std::string name;
  DailyRecord record;
};

DailyRecord of_script(const std::string& path, Language language) {
  const auto script = read_script(test::bytes_of(path), path);
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  const PourState state = *fold(script->events);
  const CheckReport report = check(state, AsOf::end(state));
  const auto day = parse_day(to_text(state.log.front().when).substr(0, 10));
  return make_daily_record({{state, report, {}}}, *day, std::chrono::minutes{0}, test::kBook, {},
                           language);
}

std::vector<Named> records() {
  std::vector<Named> all;
  const Moment day = *parse_day("2026-03-02", test::kOffset);
  for (const Language language : Language::all()) {
    const std::string code{language.code()};
    for (const char* units : {"si", "us"}) {
      const test::Sample sample = test::photographed_pour(units);
      all.push_back(
          {fmt::format("sample-{}-{}", units, code),
           make_daily_record({sample.input()}, day, test::kOffset, test::kBook, {}, language)});
    }
    for (const char* script : {"/assets/demo-pour.jsonl", "/tests/check/tall_wall.jsonl"}) {
      const fs::path path = std::string{RISEBOOK_SOURCE_DIR} + script;
      all.push_back({path.stem().string() + "-" + code, of_script(path.string(), language)});
    }
  }
  return all;
}

int checked = 0, wrong = 0;

void hold(bool same, const std::string& what) {
  ++checked;
  if (same) return;
  ++wrong;
  FAIL_CHECK(what);
}

// Local, as the workbook has it: "2026-03-02T05:30:00", perhaps with a fraction, of which
// LibreOffice writes two figures.
double seconds_of(const std::string& date) {
  if (date.size() == 10) return seconds_of(date + "T00:00:00");  // at midnight
  const auto moment = parse_moment(date.substr(0, 19) + "Z");
  if (!moment) return NAN;
  const double fraction = date.size() > 20 ? std::atof(("0" + date.substr(19)).c_str()) : 0.0;
  return std::chrono::duration<double>(moment->time_since_epoch()).count() + fraction;
}

void check_cell(const Read& read, const Cell& cell, const Column& column, const DailyRecord& record,
                const std::string& where) {
  const Shown shown{record};
  const std::string text = shown.text(cell, column);
  const auto tell = [&](const std::string& wanted) {
    return fmt::format("{}: the model gives \"{}\", LibreOffice {} \"{}\" \"{}\"", where, wanted,
                       read.kind, read.value, read.text);
  };
  if (const auto* number = std::get_if<double>(&cell)) {
    if (!std::isfinite(*number)) return;
    const double wanted = rb::shown(*number, column.measure, record.units);
    const double given = read.value.empty() ? NAN : std::atof(read.value.c_str());
    hold(read.kind == "float" && std::abs(given - wanted) <= 1e-9 * std::max(1.0, std::abs(wanted)),
         tell(fmt::format("{}", wanted)));
    hold(read.text == text, tell(text));
  } else if (const auto* moment = std::get_if<Moment>(&cell)) {
    const std::string local = to_text(*moment + record.utc_offset).substr(0, 23);
    hold(read.kind == "date" && std::abs(seconds_of(read.value) - seconds_of(local)) < 0.006,
         tell(local));
    hold(read.text.ends_with(text), tell(text));
  } else if (!std::holds_alternative<std::monostate>(cell)) {
    hold(read.kind == "string" && read.text == text, tell(text));
  } else {
    hold(read.kind.empty() && read.text.empty(), tell(""));
  }
}

void check_table(const Sheet& sheet, std::size_t from, const Table& table,
                 const DailyRecord& record, const std::string& name) {
  const Shown shown{record};
  const auto at = [&](std::size_t row, std::size_t column) {
    return row < sheet.size() && column < sheet[row].size() ? sheet[row][column] : Read{};
  };
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const Column& column = table.columns[c];
    hold(at(from, c).text.starts_with(shown.heading(column)),
         fmt::format("{} {} heading \"{}\": \"{}\"", name, table.key, shown.heading(column),
                     at(from, c).text));
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      check_cell(at(from + 1 + r, c), table.rows[r][c], column, record,
                 fmt::format("{} {} row {} {}", name, table.key, r + 1, column.key));
    }
  }
}

void check_book(const std::vector<Sheet>& sheets, const Named& named) {
  const DailyRecord& record = named.record;
  std::size_t nth = 1;
  for (const Table& table : tables_of(record)) {
    if (table.key == "day_pours") {  // on the first sheet, under what the record is
      const std::string first = Shown{record}.heading(table.columns.front());
      std::size_t row = 0;
      const Sheet& front = sheets.front();
      while (row < front.size() &&
             (front[row].size() < 2 || front[row][0].text != first || front[row][1].text.empty()))
        ++row;
      check_table(front, row, table, record, named.name);
      continue;
    }
    if (table.rows.empty()) continue;
    REQUIRE(nth < sheets.size());
    check_table(sheets[nth], 0, table, record, named.name);
    ++nth;
  }
  CHECK(nth == sheets.size());
}

}  // namespace

TEST_CASE("LibreOffice reads of each cell of the workbook what the model gives it") {
  if (std::system("command -v soffice >/dev/null 2>&1") != 0) {
    std::printf("SKIPPED: soffice is not installed (Debian: libreoffice-calc-nogui)\n");
    return;
  }
  const test::TempFolder folder;
  const std::string in = folder.path().string();
  const std::vector<Named> all = records();
  for (const Named& named : all) {
    const auto bytes = to_xlsx(named.record);
    REQUIRE(bytes);
    std::ofstream(folder.path() / (named.name + ".xlsx"), std::ios::binary) << *bytes;
  }
  (void)test::output_of(fmt::format(
      "cd '{0}' && soffice -env:UserInstallation='file://{0}/profile' --headless --convert-to fods "
      "*.xlsx >/dev/null 2>&1",
      in));
  for (const Named& named : all) {
    CAPTURE(named.name);
    const std::string text = test::bytes_of(folder.path() / (named.name + ".fods"));
    REQUIRE(text.size() > 1000);
    check_book(FlatReader{text}.sheets(), named);
  }
  CHECK(checked > 5000);
  MESSAGE(checked << " cells and headings compared");
  soak::tell("office-cells", checked, wrong);
}
