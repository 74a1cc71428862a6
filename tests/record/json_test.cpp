#include "record/form/json.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "sample.h"

using namespace rb;
using nlohmann::json;

TEST_CASE("the record as JSON is SI and UTC, whatever the plan's units") {
  const json record = json::parse(to_json(test::sample_record("us")));
  CHECK(record["day"] == "2026-03-02");
  CHECK(record["utc_offset_min"] == -300);
  CHECK(record["site"] == "Peñón Court, east core, level 14");
  CHECK(record["book"]["events"] == 187);
  CHECK(record["book"]["head_hash"] == test::kBook.head_hash);
  CHECK(record["pours"][0]["placed_m3"] == 15.0);
  CHECK(record["runs"].size() == 6);
  CHECK(record["runs"][0]["from"] == "2026-03-02T10:45:10.000Z");
  CHECK(record["runs"][0]["ran_s"] == 95.0);
  CHECK(record["runs"][0]["cables"] == true);
  CHECK(record["lifts"][1]["lift"] == 2);
  CHECK(record["lifts"][1]["lift"].is_number_integer());
  CHECK(record["trucks"][1]["volume_m3"].is_null());
  CHECK(record["findings"][2]["measured"] == 2.31);
  CHECK(record["findings"][2]["unit"] == "m/h");
  CHECK(record["signatures"][1]["at"].is_null());
  CHECK(record["dose_maps"][0]["patches"].size() == 960);
  CHECK(record["cautions"].size() == record_cautions().size());
}

TEST_CASE("the record as JSON says what of the book was verified for it") {
  auto record = test::sample_record();
  CHECK(json::parse(to_json(record))["book"]["verified"].is_null());
  record.book.looked = "the events of this pour";
  CHECK(json::parse(to_json(record))["book"]["verified"] == "the events of this pour");
}

TEST_CASE("the same record gives the same JSON") {
  CHECK(to_json(test::sample_record()) == to_json(test::sample_record()));
}
