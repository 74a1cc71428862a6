// The record's JSON against the schema published in db/, by a validator of others (valijson).
#include <doctest/doctest.h>

#include <fstream>
#include <memory>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "record/form/json.h"
#include "sample.h"
#include "temp_folder.h"

using namespace rb;
using nlohmann::json;
using valijson::adapters::NlohmannJsonAdapter;

namespace {

const valijson::Schema& schema() {
  static const std::unique_ptr<valijson::Schema> kSchema = [] {
    const json text = json::parse(test::bytes_of(RISEBOOK_SOURCE_DIR "/db/record.schema.json"));
    auto made = std::make_unique<valijson::Schema>();
    valijson::SchemaParser{valijson::SchemaParser::kDraft7}.populateSchema(
        NlohmannJsonAdapter{text}, *made);
    return made;
  }();
  return *kSchema;
}

// What the validator says against it; empty: nothing.
std::string faults(const json& record) {
  valijson::Validator validator;
  valijson::ValidationResults results;
  if (validator.validate(schema(), NlohmannJsonAdapter{record}, &results)) return {};
  std::string all;
  valijson::ValidationResults::Error error;
  while (results.popError(error)) {
    for (const std::string& step : error.context) all += step;
    all += ": " + error.description + "\n";
  }
  return all.empty() ? "not valid" : all;
}

json as_json(const DailyRecord& record) {
  return json::parse(to_json(record));
}

DailyRecord of_script(const std::string& path) {
  const auto script = read_script(test::bytes_of(path), path);
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  const PourState state = *fold(script->events);
  const CheckReport report = check(state, AsOf::end(state));
  const auto day = parse_day(to_text(state.log.front().when).substr(0, 10));
  REQUIRE(day);
  return make_daily_record({RecordInput{state, report, {}}}, *day, std::chrono::minutes{0},
                           test::kBook);
}

}  // namespace

TEST_CASE("the record's JSON is as its published schema says") {
  for (const char* units : {"si", "us"}) {
    DailyRecord record = test::sample_record(units, 3, "\"a note more\"");
    for (const Language language : Language::all()) {
      record.language = language;
      CHECK(faults(as_json(record)) == "");
    }
  }
}

TEST_CASE("the record of the demo and of the tall wall is as the schema says") {
  for (const char* path : {"/assets/demo-pour.jsonl", "/tests/check/tall_wall.jsonl"}) {
    CAPTURE(path);
    CHECK(faults(as_json(of_script(std::string{RISEBOOK_SOURCE_DIR} + path))) == "");
  }
}

TEST_CASE("a day without pours, a second edition and a damaged pour are as the schema says") {
  const Moment day = *parse_day("2026-03-02", test::kOffset);
  CHECK(faults(as_json(make_daily_record({}, day, test::kOffset, test::kBook))) == "");
  DailyRecord record = test::sample_record();
  record.edition = 2;
  record.earlier = EarlierEdition{"record.pdf", std::string(64, 'a')};
  record.book.damage = "it does not hold";
  record.without_plan.push_back({PourId{"P-9"}, 12, {{{EventId{"e1"}, "torn"}}, {}}});
  CHECK(faults(as_json(record)) == "");
}

TEST_CASE("a record with photos is as the schema says, and tells of each file how it stands") {
  const test::Sample sample = test::photographed_pour();
  const json record = as_json(make_daily_record(
      {sample.input()}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook));
  CHECK(faults(record) == "");
  std::vector<std::string> standing;
  for (const json& photo : record["photos"]) standing.push_back(photo["standing"]);
  CHECK(standing == std::vector<std::string>{"whole", "missing", "altered",
                                             "whole, but cannot be drawn", "whole"});
  CHECK(record["photos"][0]["sha256"] == std::string(64, '0'));
  CHECK(record["photos"][0]["bytes"] == 1000);
  CHECK(record["photos"][0]["blemish"] == 1);
  CHECK(record["photos"][3]["repair"] == "cut back and filled, procedure R-2");
  CHECK(record["photos"][4]["blemish"] == nullptr);
}

TEST_CASE("the schema refuses what the record does not say") {
  const json good = as_json(test::sample_record());
  REQUIRE(faults(good) == "");
  json bad = good;
  bad["lifts"][0]["top_m"] = "high";
  CHECK(faults(bad) != "");
  bad = good;
  bad["runs"][0].erase("from");
  CHECK(faults(bad) != "");
  bad = good;
  bad["runs"][0]["shown"]["speed"] = 6000;
  CHECK(faults(bad) != "");
  bad = good;
  bad["as_of"] = "yesterday";
  CHECK(faults(bad) != "");
  bad = good;
  bad["more"] = 1;
  CHECK(faults(bad) != "");
}
