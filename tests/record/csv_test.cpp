#include "record/form/csv.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sample.h"

using namespace rb;

namespace {

using Rows = std::vector<std::vector<std::string>>;

// RFC 4180, section 2, rules 1 to 7.
Rows parse(const std::string& text) {
  Rows rows(1, {""});
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
        rows.back().back() += '"';
        ++i;
      } else if (c == '"') {
        quoted = false;
      } else {
        rows.back().back() += c;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\r') {
      REQUIRE(text[i + 1] == '\n');
      ++i;
      if (i + 1 < text.size()) rows.push_back({""});
    } else {
      REQUIRE(c != '\n');
      rows.back().back() += c;
    }
  }
  REQUIRE_FALSE(quoted);
  return rows;
}

Table table_named(const DailyRecord& record, const std::string& key) {
  for (Table& table : tables_of(record)) {
    if (table.key == key) return table;
  }
  FAIL("no table " << key);
  return {};
}

std::string one_cell(const Cell& cell) {
  return parse(to_csv({"t", "T", {{"a", "A"}}, {{cell}}})).at(1).at(0);
}

}  // namespace

TEST_CASE("every table reads back with a field for every column") {
  const DailyRecord record = test::sample_record();
  for (const Table& table : tables_of(record)) {
    CAPTURE(table.key);
    const Rows rows = parse(to_csv(table));
    CHECK(rows.size() == table.rows.size() + 1);
    for (const auto& row : rows) CHECK(row.size() == rows.front().size());
  }
}

TEST_CASE("lifts are written in SI with the unit in the column's name and UTC times") {
  const Rows rows = parse(to_csv(table_named(test::sample_record("us"), "lifts")));
  const std::vector<std::string> heading{"pour",         "element",        "lift",
                                         "placed_from",  "placed_to",      "top_m",
                                         "rise_mean_mh", "rise_window_mh", "rise_limit_mh",
                                         "under_share",  "min_dose_s",     "mean_dose_s"};
  CHECK(rows.front() == heading);
  REQUIRE(rows.size() == 4);
  CHECK(rows[2][0] == "P-2026-014");
  CHECK(rows[2][2] == "2");
  CHECK(rows[2][3] == "2026-03-02T11:00:30.000Z");
  CHECK(rows[2][9] == "0.057");
  CHECK(rows[2][11] == "118.25");  // not rounded
}

TEST_CASE("commas, quotes and line ends stay inside their field") {
  CHECK(one_cell(std::string{"a, \"b\"\nc"}) == "a, \"b\"\nc");
}

TEST_CASE("a text that would be a formula is a text; a number is a number") {
  CHECK(one_cell(std::string{"=1+1"}) == "'=1+1");
  CHECK(one_cell(std::string{"+49 30"}) == "'+49 30");
  CHECK(one_cell(std::string{"-see note"}) == "'-see note");
  CHECK(one_cell(std::string{"@home"}) == "'@home");
  CHECK(one_cell(-5.5) == "-5.5");
  CHECK(one_cell(std::string{"a=b"}) == "a=b");
}

TEST_CASE("what is absent is empty, what is not a number too") {
  CHECK(one_cell({}).empty());
  CHECK(one_cell(std::nan("")).empty());
}

TEST_CASE("bytes that are no text and control characters do no harm") {
  test::Sample sample = test::sample_pour();
  sample.report.findings[0].sentence = "bad \xff byte\tand \x01 control\r\nend";
  const DailyRecord record = make_daily_record(
      {sample.input()}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook);
  const std::string csv = to_csv(table_named(record, "findings"));
  CHECK(csv.find('\xff') == std::string::npos);
  CHECK(csv.find('\x01') == std::string::npos);
  CHECK(csv.find("bad \uFFFD byte and  control\nend") != std::string::npos);
}
