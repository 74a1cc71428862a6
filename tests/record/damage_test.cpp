// The record of a damaged book shows what reads and prints, in red, what does not.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "record/form/csv.h"
#include "record/form/json.h"
#include "record/form/xlsx.h"
#include "record/model/table.h"
#include "record/pdf/pdf.h"
#include "sample.h"
#include "temp_folder.h"
#include "zip.h"

using namespace rb;

namespace {

const PourWithoutPlan kLost{
    PourId{"Pier 4"}, 41, {{{EventId{"TABLET-07-90"}, "nothing of it can be read"}}, {}}};

DailyRecord damaged_record() {
  const test::Sample sample = test::sample_pour();
  RecordInput input = sample.input();
  input.unread = {{{EventId{"TABLET-07-33"}, "what reads of it does not fit its hash"}},
                  {{EventId{"TABLET-07-34"}, "a kind \"drone-scan\" this Risebook does not know"}}};
  BookFacts book = test::kBook;
  book.damage = "The book is damaged: 2 of its events are not whole.";
  return make_daily_record({input}, *parse_day("2026-03-02", test::kOffset), test::kOffset, book,
                           {kLost});
}

std::string pdf_words(const std::string& pdf) {
  const test::TempFolder folder;
  const auto file = folder.path() / "record.pdf";
  std::ofstream(file, std::ios::binary) << pdf;
  return test::output_of(fmt::format("pdftotext -layout '{}' -", file.string()));
}

// How many pixels of the damage's red are on the pages, drawn by poppler.
std::size_t red_pixels(const std::string& pdf) {
  const test::TempFolder folder;
  const auto file = folder.path() / "record.pdf";
  std::ofstream(file, std::ios::binary) << pdf;
  const auto drawn = test::output_of(fmt::format("pdftoppm -r 50 '{}'", file.string()));
  std::size_t red = 0, at = 0;
  while ((at = drawn.find("P6", at)) != std::string::npos) {
    int width = 0, height = 0, most = 0, used = 0;
    if (std::sscanf(drawn.c_str() + at, "P6 %d %d %d%n", &width, &height, &most, &used) != 3) break;
    at += static_cast<std::size_t>(used) + 1;
    const auto end = std::min(drawn.size(), at + static_cast<std::size_t>(width * height) * 3);
    for (; at + 3 <= end; at += 3) {
      const auto part = [&](std::size_t i) { return static_cast<unsigned char>(drawn[at + i]); };
      if (part(0) > 150 && part(1) < 90 && part(2) < 90 && part(2) > part(1) - 20) ++red;
    }
  }
  return red;
}

const Table& table_of(const std::vector<Table>& tables, const std::string& key) {
  for (const Table& table : tables) {
    if (table.key == key) return table;
  }
  FAIL("no table ", key);
  return tables.front();
}

}  // namespace

TEST_CASE("the PDF names what is damaged, in red, and a sound book's has no red") {
  const auto pdf = to_pdf(damaged_record());
  REQUIRE(pdf);
  const std::string words = pdf_words(*pdf);
  for (const char* part :
       {"The book is damaged: 2 of its events", "1 of this pour's events is damaged",
        "Damaged events", "TABLET-07-33", "does not fit its hash", "TABLET-07-34", "drone-scan",
        "Pour Pier 4: damaged events", "TABLET-07-90", "41 of its"}) {
    CAPTURE(std::string(part));
    CHECK(words.find(part) != std::string::npos);
  }
  CHECK(red_pixels(*pdf) > 50);
  const auto sound = to_pdf(test::sample_record());
  REQUIRE(sound);
  CHECK(red_pixels(*sound) == 0);
  CHECK(pdf_words(*sound).find("amaged") == std::string::npos);
}

TEST_CASE("CSV and JSON hold a row for every damaged event, its pour beside it") {
  const DailyRecord record = damaged_record();
  const std::string csv = to_csv(table_of(tables_of(record), "damaged"));
  CHECK(csv.find("TABLET-07-33,what reads of it does not fit its hash") != std::string::npos);
  CHECK(csv.find("Pier 4,TABLET-07-90") != std::string::npos);
  CHECK(csv.find("Pier 4,,") != std::string::npos);
  const auto json = nlohmann::json::parse(to_json(record));
  CHECK(json.at("damaged").size() == 3);
  CHECK(json.at("newer").size() == 1);
  CHECK(json.at("book").at("damage") == "The book is damaged: 2 of its events are not whole.");
  CHECK(nlohmann::json::parse(to_json(test::sample_record())).at("book").at("damage").is_null());
}

TEST_CASE("the workbook has the damage on its front and on a sheet") {
  const auto bytes = to_xlsx(damaged_record());
  REQUIRE(bytes);
  const auto texts = test::unzip(*bytes).at("xl/sharedStrings.xml").bytes;
  CHECK(texts.find("TABLET-07-33") != std::string::npos);
  CHECK(texts.find("The book is damaged") != std::string::npos);
  CHECK(test::unzip(*bytes).at("xl/styles.xml").bytes.find("BE161B") != std::string::npos);
}

TEST_CASE("what is damaged is told in the reader's language") {
  DailyRecord record = damaged_record();
  record.language = *Language::of_code("es");
  const auto pdf = to_pdf(record);
  REQUIRE(pdf);
  const std::string words = pdf_words(*pdf);
  for (const char* part :
       {"no se puede leer nada", "no cuadra con su hash", "no se puede mostrar"}) {
    CAPTURE(part);
    CHECK(words.find(part) != std::string::npos);
  }
  CHECK(words.find("can be read") == std::string::npos);
  CHECK(words.find("its hash") == std::string::npos);
}
