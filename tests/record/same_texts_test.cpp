// One figure, one text: what the model gives a cell is what stands on paper (read by pdftotext), in
// the page, in the workbook and beside the value in JSON.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "record/form/archive_pdf.h"
#include "record/form/html.h"
#include "record/form/json.h"
#include "record/form/xlsx.h"
#include "record/told/shown.h"
#include "sample.h"
#include "temp_folder.h"
#include "zip.h"

using namespace rb;

namespace {

std::string without_blanks(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.compare(i, 2, "\u00A0") == 0) {
      ++i;
    } else if (std::isspace(static_cast<unsigned char>(text[i])) == 0) {
      out += text[i];
    }
  }
  return out;
}

std::vector<std::string> words(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> all;
  for (std::string word; in >> word;) all.push_back(without_blanks(word));
  return all;
}

// Roles begin and badges stand in capitals on paper.
std::string small(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

std::string in_markup(std::string text) {
  text = replaced(std::move(text), "&", "&amp;");
  text = replaced(std::move(text), "<", "&lt;");
  return replaced(std::move(text), ">", "&gt;");
}

std::string on_paper(const DailyRecord& record) {
  const test::TempFolder folder;
  const auto file = folder.path() / "record.pdf";
  const auto bytes = to_archive_pdf(record);
  REQUIRE(bytes);
  std::ofstream(file, std::ios::binary) << *bytes;
  return small(
      without_blanks(test::output_of(fmt::format("pdftotext -raw '{}' -", file.string()))));
}

struct Workbook {
  std::string strings;
  std::set<double> numbers;
};
Workbook in_workbook(const DailyRecord& record) {
  const auto bytes = to_xlsx(record);
  REQUIRE(bytes);
  Workbook book;
  static const std::regex kNumber{"<v>([^<]*)</v>"};
  for (const auto& [name, entry] : test::unzip(*bytes)) {
    if (name == "xl/sharedStrings.xml") book.strings = replaced(entry.bytes, "&quot;", "\"");
    if (name.rfind("xl/worksheets/sheet", 0) != 0) continue;
    for (std::sregex_iterator it(entry.bytes.begin(), entry.bytes.end(), kNumber), end; it != end;
         ++it) {
      book.numbers.insert(std::stod((*it)[1]));
    }
  }
  return book;
}

bool holds(const std::set<double>& numbers, double value) {
  const auto at = numbers.lower_bound(value - 1e-9 * std::max(1.0, std::abs(value)));
  return at != numbers.end() && std::abs(*at - value) <= 1e-9 * std::max(1.0, std::abs(value));
}

struct Forms {
  std::string paper, page;
  Workbook book;
  nlohmann::json data;
};

void check_cell(const Forms& forms, const nlohmann::json& row, const Cell& cell,
                const Column& column, const Shown& shown) {
  const std::string text = shown.text(cell, column);
  CAPTURE(text);
  CAPTURE(column.key);
  REQUIRE(row["shown"].at(column.key) == text);
  REQUIRE(forms.page.find(">" + in_markup(text) + "</td>") != std::string::npos);
  for (const std::string& word : words(text)) {
    CAPTURE(word);
    REQUIRE(forms.paper.find(small(word)) != std::string::npos);
  }
  if (const auto* number = std::get_if<double>(&cell)) {
    REQUIRE(holds(forms.book.numbers, rb::shown(*number, column.measure, shown.units())));
  } else if (!std::holds_alternative<Moment>(cell)) {
    REQUIRE(forms.book.strings.find(in_markup(text)) != std::string::npos);
  }
}

// A row stands on paper in one piece, cell after cell in the order of the columns, unless it is so
// tall that pages part it: then its words stand there.
bool stands_whole(const Forms& forms, const Table& table, const std::vector<Cell>& row,
                  const Shown& shown) {
  std::string all;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const Column& column = table.columns[c];
    if (column.on == On::data || column.key == "pour") continue;
    all += small(without_blanks(shown.text(row[c], column)));
  }
  return forms.paper.find(all) != std::string::npos;
}

int check_record(const DailyRecord& record) {
  const Shown shown{record};
  const Forms forms{on_paper(record), to_html(record), in_workbook(record),
                    nlohmann::json::parse(to_json(record))};
  int checked = 0;
  int parted = 0;
  for (const Table& table : tables_of(record)) {
    CAPTURE(table.key);
    // What is no table on paper: facts under a pour's name, a pen's lines, a sentence.
    const bool told = table.key == "pours" || table.key == "people" || table.key == "signatures" ||
                      table.key == "edition";
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      const nlohmann::json& row = forms.data.at(table.key).at(r);
      if (!told && !stands_whole(forms, table, table.rows[r], shown)) {
        MESSAGE(table.key, " row ", r + 1, " is parted");
        ++parted;
      }
      for (std::size_t c = 0; c < table.columns.size(); ++c) {
        const Column& column = table.columns[c];
        if (column.on == On::data || column.key == "pour") continue;
        // People stand on paper by name.
        if (table.key == "people" && column.key == "person") continue;
        // A pen's line on paper stands where the workbook has a table.
        if (table.key == "signatures" && column.measure == Measure::count) continue;
        if (std::holds_alternative<std::monostate>(table.rows[r][c])) continue;
        check_cell(forms, row, table.rows[r][c], column, shown);
        ++checked;
      }
    }
  }
  CHECK(parted <= 2);
  return checked;
}

}  // namespace

TEST_CASE("every text of the model stands in every form, in both units and languages") {
  for (const char* units : {"si", "us"}) {
    CAPTURE(units);
    const test::Sample sample = test::sample_pour(units);
    for (const Language language : Language::all()) {
      CAPTURE(language.code());
      const Moment day = *parse_day("2026-03-02", test::kOffset);
      const int checked = check_record(
          make_daily_record({sample.input()}, day, test::kOffset, test::kBook, {}, language));
      CHECK(checked > 350);
    }
  }
}

TEST_CASE("every text of photos stands in every form, of those that have no picture too") {
  const test::Sample sample = test::photographed_pour();
  for (const Language language : Language::all()) {
    CAPTURE(language.code());
    const Moment day = *parse_day("2026-03-02", test::kOffset);
    CHECK(check_record(make_daily_record({sample.input()}, day, test::kOffset, test::kBook, {},
                                         language)) > 400);
  }
}

TEST_CASE("no id of a rule stands on paper, in either language") {
  const test::Sample sample = test::sample_pour();
  for (const Language language : Language::all()) {
    const Moment day = *parse_day("2026-03-02", test::kOffset);
    const std::string paper = on_paper(
        make_daily_record({sample.input()}, day, test::kOffset, test::kBook, {}, language));
    for (const RuleCard& card : rule_cards()) {
      const std::string id = card.id;
      CAPTURE(id);
      if (id.find('-') != std::string::npos) CHECK(paper.find(id) == std::string::npos);
    }
  }
}
