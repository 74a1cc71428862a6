#include "record/model/daily_record.h"
#include "record/told/shown.h"

#include <doctest/doctest.h>

#include "sample.h"

using namespace rb;
using doctest::Approx;

namespace {

const PourRecord& only(const DailyRecord& record) {
  REQUIRE(record.pours.size() == 1);
  return record.pours.front();
}

Moment utc(const char* text) {
  return *parse_moment(text);
}

}  // namespace

TEST_CASE("the record tells site, day, offset and book") {
  const DailyRecord record = test::sample_record();
  CHECK(record.site == "Peñón Court, east core, level 14");
  CHECK(day_text(record) == "2026-03-02");
  CHECK(Shown{record}.long_day() == "Monday 2 March 2026");  // any perpetual calendar
  CHECK(offset_text(record.utc_offset) == "UTC-05:00");
  CHECK(offset_text(std::chrono::minutes{345}) == "UTC+05:45");
  CHECK(offset_text(std::chrono::minutes{0}) == "UTC+00:00");
  CHECK(record.book == test::kBook);
}

TEST_CASE("its date is that of the newest event, never the clock's") {
  // the repair at 10800 + 90000 s after 10:00, entered one second later
  CHECK(test::sample_record().as_of == utc("2026-03-03T14:00:01Z"));
}

TEST_CASE("the pour's facts: opened, closed, loads, volumes") {
  const PourRecord pour = only(test::sample_record());
  CHECK(pour.opened == utc("2026-03-02T09:30:00Z"));
  CHECK(pour.closed == utc("2026-03-02T13:00:00Z"));
  CHECK(pour.method == "ACI 347");
  CHECK(pour.trucks == 3);
  REQUIRE(pour.placed);
  CHECK(in_cubic_metres(*pour.placed) == Approx(15.0));
  REQUIRE(pour.net);  // 12 x 4.2 x 0.3 less the opening's 1.2 x 1.5 x 0.3
  CHECK(in_cubic_metres(*pour.net) == Approx(15.12 - 0.54));
  REQUIRE(pour.elements.size() == 1);
  CHECK(pour.elements[0].mixes == "C40");
  CHECK(pour.elements[0].rows == 4);
}

TEST_CASE("a run tells its seconds, speed, head and cables") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.runs.size() == 6);
  const RunLine& first = pour.runs.front();
  CHECK(first.row == "R1");
  CHECK(first.side == "near");
  CHECK(first.from == utc("2026-03-02T10:45:10Z"));
  REQUIRE(first.ran);
  CHECK(in_seconds(*first.ran) == Approx(95));
  CHECK(in_vibrations_per_minute(*first.speed) == Approx(6000));
  CHECK(in_kilopascals(*first.head) == Approx(21.5));
  CHECK(first.cables);
  CHECK_FALSE(pour.runs.back().cables);  // R3 was hung with its cables not confirmed
}

TEST_CASE("a load shows its age and each of its tests on a line") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.loads.size() == 4);
  CHECK(pour.loads[0].ticket == "48120");
  CHECK(in_seconds(*pour.loads[0].age) == Approx(29 * 60));  // 09:31 to 10:00
  CHECK(pour.loads[0].air == 2.1);
  CHECK(pour.loads[1].ticket == "48120");
  CHECK_FALSE(pour.loads[1].volume);  // so that a sum over the column stays right
  CHECK(in_metres(*pour.loads[1].slump) == Approx(0.14));
  CHECK_FALSE(pour.loads[1].air);
}

TEST_CASE("motors hung and taken down are told with who did it") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.moves.size() == 3);
  CHECK(pour.moves[0].down == utc("2026-03-02T11:33:20Z"));
  CHECK_FALSE(pour.moves[1].down);
  CHECK(pour.moves[2].motors == "R1M1 R1M2 R1M3 R1M4 R1M5 R1M6");
  CHECK(pour.moves[2].by == "Inés Acuña");
}

TEST_CASE("a correction tells before and after, who, why and when") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.corrections.size() == 2);
  const CorrectionLine& fixed =
      pour.corrections[0].what == "changed" ? pour.corrections[0] : pour.corrections[1];
  const CorrectionLine& struck =
      pour.corrections[0].what == "struck" ? pour.corrections[0] : pour.corrections[1];
  CHECK(fixed.changes == "top W1: height 2.3 → 2.35");
  CHECK(fixed.why == "read from the wrong mark");
  CHECK(fixed.by == "Inés Acuña");
  CHECK(fixed.at == utc("2026-03-02T11:45:00Z"));
  CHECK(fixed.before.find("2.3") != std::string::npos);
  CHECK(struck.changes == "note: text =SUM(A1:A9) typed by mistake");
  CHECK(struck.after.empty());
  REQUIRE(pour.notes.size() == 1);  // the struck note is no note any more
}

TEST_CASE("what was entered late, and what said nothing new, is told") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.late.size() == 1);
  CHECK(in_seconds(pour.late[0].late) == Approx(900));
  CHECK(pour.late[0].what == "top: bay 2, element W1, height 2.35");
  REQUIRE(pour.aside.size() == 1);
  CHECK(pour.aside[0].what.substr(0, 4) == "run:");
  CHECK_FALSE(pour.aside[0].why.empty());
}

TEST_CASE("a role that has not signed gets an empty line to sign by hand") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.signatures.size() == 3);
  CHECK(pour.signatures[0].role == "foreman");
  CHECK(pour.signatures[0].verdict == "placed as logged");
  CHECK(pour.signatures[0].at == utc("2026-03-02T13:10:00Z"));
  CHECK(pour.signatures[1].role == "inspector");
  CHECK_FALSE(pour.signatures[1].at);
  CHECK(pour.signatures[2].role == "superintendent");
}

TEST_CASE("a blemish is tied to its repair") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.blemishes.size() == 1);
  CHECK(pour.blemishes[0].kind == "honeycomb");
  CHECK(pour.blemishes[0].repairs == "cut back and filled, procedure R-2 (Joost van der Meulen)");
}

TEST_CASE("a finding counts bays from 1 and keeps its number and source") {
  const PourRecord pour = only(test::sample_record());
  REQUIRE(pour.findings.size() == 4);
  CHECK(pour.findings[1].rule == "dose-low");
  CHECK(pour.findings[1].bay == 2);
  CHECK(pour.findings[1].measured->si == 0.057);
  CHECK_FALSE(pour.findings[1].source.empty());
}

TEST_CASE("every limit is told with where it comes from") {
  test::Sample sample = test::sample_pour();
  auto plan = std::make_shared<Plan>(*sample.state.plan);
  plan->limits.dose_min = {seconds(75), LimitFrom::plan};
  sample.state.plan = plan;
  const PourRecord pour = only(make_daily_record({sample.input()}, {}, test::kOffset, test::kBook));
  REQUIRE(pour.limits.size() == 15);
  CHECK(pour.limits[0].value == amount(seconds(75)));
  CHECK(pour.limits[0].from == "plan");
  CHECK(pour.limits[1].value == amount(seconds(120)));
  CHECK(pour.limits[1].from.substr(0, 9) == "default: ");
  const auto plastic = std::find_if(pour.limits.begin(), pour.limits.end(), [](const auto& limit) {
    return limit.limit.find("share of the time to set") != std::string::npos;
  });
  REQUIRE(plastic != pour.limits.end());
  CHECK(plastic->from == "default: until it sets: a choice of this project");
}

TEST_CASE("a pour touches the days it has events on, by the local clock") {
  const test::Sample sample = test::sample_pour();
  const auto on = [&](const char* day, std::chrono::minutes offset) {
    return touches(sample.state, plain_day(*parse_day(day, offset), offset));
  };
  CHECK(on("2026-03-02", test::kOffset));
  CHECK(on("2026-03-03", test::kOffset));  // stripped
  CHECK_FALSE(on("2026-03-01", test::kOffset));
  CHECK_FALSE(on("2026-03-04", test::kOffset));
  CHECK(on("2026-03-04", std::chrono::minutes{14 * 60}));  // 14:00 UTC is the next day there
}

TEST_CASE("the record of a day without pours is a record") {
  const DailyRecord record =
      make_daily_record({}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook);
  CHECK(record.pours.empty());
  CHECK(record.as_of == record.day);
}

TEST_CASE("every record carries the cautions") {
  std::string all;
  for (const std::string& caution : record_cautions()) all += caution;
  for (const std::string word : {"Form pressure", "Electricity", "Overhead motors", "local codes",
                                 "form designer", "licensed practice", "The tool advises"}) {
    CAPTURE(word);
    CHECK(all.find(word) != std::string::npos);
  }
}
