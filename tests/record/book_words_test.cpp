// Records tell the number of the head's event beside its hash, and its short code.
#include "record/model/book_words.h"

#include <doctest/doctest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "base/short_code.h"
#include "record/form/csv.h"
#include "record/form/json.h"
#include "record/form/write_record.h"
#include "record/form/xlsx.h"
#include "sample.h"
#include "temp_folder.h"
#include "zip.h"

using namespace rb;

namespace {

DailyRecord numbered() {
  DailyRecord record = test::sample_record();
  record.book.head_event = 187;
  return record;
}

const std::string kCode = short_code(test::kBook.head_hash);

}  // namespace

TEST_CASE("the head is told by number, hash and code; what is not known is left out") {
  REQUIRE(kCode.size() == 11);
  CHECK(head_words(numbered().book) ==
        "event 187, hash " + test::kBook.head_hash + ", short code " + kCode);
  CHECK(head_words(test::kBook) == "hash " + test::kBook.head_hash + ", short code " + kCode);
  CHECK(head_words({}) == "hash ");
}

TEST_CASE("json and workbook tell number and code") {
  const auto json = nlohmann::json::parse(to_json(numbered()));
  CHECK(json["book"]["head_event"] == 187);
  CHECK(json["book"]["short_code"] == kCode);
  CHECK(nlohmann::json::parse(to_json(test::sample_record()))["book"]["head_event"].is_null());
  const auto workbook = to_xlsx(numbered());
  REQUIRE(workbook);
  const auto files = test::unzip(*workbook);
  const std::string& words = files.at("xl/sharedStrings.xml").bytes;
  CHECK(words.find("Newest event") != std::string::npos);
  CHECK(words.find(kCode) != std::string::npos);
}

TEST_CASE("among the CSV files one tells of the book") {
  const test::TempFolder folder;
  REQUIRE(write_record(numbered(), folder.path(), {Format::csv}));
  std::ifstream in{folder.path() / "consolidation-2026-03-02-TABLET-07-book.csv"};
  std::stringstream text;
  text << in.rdbuf();
  CHECK(text.str() ==
        "tag,events,head_event,head_hash,short_code,verified,damage\r\nTABLET-07,187,"
        "187," +
            test::kBook.head_hash + "," + kCode + ",,\r\n");
}
