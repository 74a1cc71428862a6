#include "record/form/xlsx.h"

#include <doctest/doctest.h>

#include "record/model/table.h"
#include "sample.h"
#include "zip.h"

using namespace rb;

namespace {

std::map<std::string, test::ZipEntry> opened(const DailyRecord& record) {
  const auto bytes = to_xlsx(record);
  REQUIRE_MESSAGE(bytes, to_text(bytes.error()));
  return test::unzip(*bytes);
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// The sheet of a table: sheet 1 says what the record is, the tables follow in their order.
std::string sheet_of(const std::map<std::string, test::ZipEntry>& files, const DailyRecord& record,
                     const std::string& key) {
  int number = 2;
  for (const Table& table : tables_of(record)) {
    if (table.rows.empty() || table.key == "day_pours") continue;
    if (table.key == key)
      return files.at("xl/worksheets/sheet" + std::to_string(number) + ".xml").bytes;
    ++number;
  }
  FAIL("no table " << key);
  return {};
}

}  // namespace

TEST_CASE("the workbook opens and has a sheet for each table that has rows") {
  const DailyRecord record = test::sample_record();
  const auto files = opened(record);
  const std::string& book = files.at("xl/workbook.xml").bytes;
  for (const std::string name :
       {"Record", "Lifts", "Runs of the rows", "Findings", "Trucks and tests", "Signatures"}) {
    CAPTURE(name);
    CHECK(has(book, "name=\"" + std::string{name} + "\""));
  }
  std::size_t sheets = 1;
  for (const Table& table : tables_of(record)) {
    if (!table.rows.empty() && table.key != "day_pours") ++sheets;
  }
  CHECK(files.count("xl/worksheets/sheet" + std::to_string(sheets) + ".xml") == 1);
  CHECK(files.count("xl/worksheets/sheet" + std::to_string(sheets + 1) + ".xml") == 0);
  CHECK_FALSE(has(book, "name=\"Curing\""));  // nothing was cured
}

TEST_CASE("numbers are numbers in the plan's units") {
  const DailyRecord record = test::sample_record("us");
  const auto files = opened(record);
  CHECK(has(sheet_of(files, record, "runs"), "<v>95</v>"));
  CHECK(has(sheet_of(files, record, "trucks"), "<v>2.1</v>"));
  CHECK(has(sheet_of(files, record, "elements"), "<v>39.37007874015"));  // 12 m in feet
  CHECK(has(files.at("xl/sharedStrings.xml").bytes, "Length (ft)"));
}

TEST_CASE("times are the local clock's, and the heading names the offset") {
  const DailyRecord record = test::sample_record();
  const auto files = opened(record);
  // 2026-03-02 is day 46083 of the spreadsheet's calendar (day 1 is 1900-01-01, with a 29 February
  // 1900); 05:45:10 is 0.2397 of it.
  CHECK(has(sheet_of(files, record, "runs"), "<v>46083.239699"));
  CHECK(has(files.at("xl/sharedStrings.xml").bytes, "From (UTC-05:00)"));
}

TEST_CASE("a text that begins like a formula stays a text") {
  test::Sample sample = test::sample_pour();
  sample.report.findings[0].sentence = "{note}";
  sample.report.findings[0].facts = {{"note", std::string{"=HYPERLINK(\"x\")"}}};
  const DailyRecord record = make_daily_record(
      {sample.input()}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook);
  const auto files = opened(record);
  CHECK(has(files.at("xl/sharedStrings.xml").bytes, "=HYPERLINK("));
  for (const auto& [name, entry] : files) {
    const auto& tried = name;
    CAPTURE(tried);
    CHECK_FALSE(has(entry.bytes, "<f>"));
  }
}

TEST_CASE("the workbook is dated by the record and is the same twice") {
  const DailyRecord record = test::sample_record();
  const auto once = to_xlsx(record);
  const auto twice = to_xlsx(record);
  REQUIRE(once);
  CHECK(*once == *twice);
  const auto files = test::unzip(*once);
  CHECK(has(files.at("docProps/core.xml").bytes, "2026-03-03T14:00:01Z"));
  for (const auto& [name, entry] : files) {
    const auto& tried = name;
    CAPTURE(tried);
    CHECK(entry.date == ((0U << 9U) | (1U << 5U) | 1U));  // 1980-01-01, as old as zip can say
  }
}

TEST_CASE("a text longer than a cell can hold is cut and the workbook still opens") {
  test::Sample sample = test::sample_pour();
  sample.report.findings[0].sentence = "{note}";
  sample.report.findings[0].facts = {{"note", std::string(40000, 'a') + "é"}};
  const DailyRecord record = make_daily_record(
      {sample.input()}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook);
  CHECK(has(opened(record).at("xl/sharedStrings.xml").bytes, "aaa..."));
}

TEST_CASE("the first sheet holds the day's figures and the picture of each face") {
  const DailyRecord record = test::sample_record();
  const auto files = opened(record);
  const std::string& first = files.at("xl/worksheets/sheet1.xml").bytes;
  CHECK(has(first, "<drawing "));
  CHECK(has(first, "<v>15</v>"));  // cubic metres placed
  CHECK(files.count("xl/media/image1.png") == 1);
  CHECK(files.at("xl/media/image1.png").bytes ==
        dose_map_png(record.pours[0].dose_maps[0], {}, 1000));
  CHECK(files.count("xl/media/image2.png") == 0);
}

TEST_CASE("a workbook in Spanish names its sheets and heads its columns in Spanish") {
  DailyRecord record = test::sample_record();
  record.language = *Language::of_code("es");
  const auto files = opened(record);
  for (const std::string name : {"Registro", "Capas", "Vibrado de las filas", "Hallazgos"}) {
    CAPTURE(name);
    CHECK(has(files.at("xl/workbook.xml").bytes, "name=\"" + name + "\""));
  }
  CHECK(has(files.at("xl/sharedStrings.xml").bytes, "Colada desde (UTC-05:00)"));
}
