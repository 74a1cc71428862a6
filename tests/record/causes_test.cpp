// The record tells findings cause by cause, in the order the checker gives them, numbered.
#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "record/model/daily_record.h"
#include "record/model/table.h"
#include "sample.h"

using namespace rb;

namespace {

Table findings_of_tall_wall() {
  std::ifstream in{RISEBOOK_SOURCE_DIR "/tests/check/tall_wall.jsonl"};
  std::ostringstream text;
  text << in.rdbuf();
  const auto script = read_script(text.str(), "tall_wall.jsonl");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  const PourState state = *fold(script->events);
  const CheckReport report = check(state, AsOf::end(state));
  const std::vector<SideDose> no_maps;
  const RecordInput input{state, report, no_maps};
  const Moment opened = state.log.front().when;
  const auto day = parse_day(to_text(opened).substr(0, 10), std::chrono::minutes{0});
  REQUIRE(day);
  const DailyRecord record = make_daily_record({input}, *day, std::chrono::minutes{0}, test::kBook);
  REQUIRE(record.pours.size() == 1);
  for (Table& table : tables_of(record.pours.front(), Units::si)) {
    if (table.key == "findings") return table;
  }
  return {};
}

std::string text_in(const Table& table, std::size_t row, const std::string& key) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c].key != key) continue;
    const auto* text = std::get_if<std::string>(&table.rows[row][c]);
    return text == nullptr ? "" : *text;
  }
  FAIL("no column " << key);
  return {};
}

}  // namespace

TEST_CASE("the tall wall's five causes stand first in the record, each with place and figure") {
  const Table findings = findings_of_tall_wall();
  struct Told {
    const char* number;
    const char* rule;
    const char* place;
    const char* figure;  // in what is told
  };
  const Told five[] = {{"1", "head-high", "K3, row R6, near", "head of 55.2"},
                       {"2", "knit-late", "K3, lift 6, bay 1", "lift 6"},
                       {"3", "slump-out", "", "ticket 5203: slump 170"},
                       {"4", "dose-low", "K3, lift 4, bay 2, near", "lift 4: 29."},
                       {"5", "run-short", "K3, lift 3, row R2, near", "ran 28"}};
  std::size_t next = 0;
  for (std::size_t row = 0; row < findings.rows.size(); ++row) {
    const std::string number = text_in(findings, row, "number");
    if (number.find('.') != std::string::npos) continue;  // of the cause above it
    if (next == 5) break;
    CAPTURE(number);
    CHECK(number == five[next].number);
    CHECK(text_in(findings, row, "rule") == five[next].rule);
    if (*five[next].place != 0) CHECK(text_in(findings, row, "place") == five[next].place);
    CHECK(text_in(findings, row, "told").find(five[next].figure) != std::string::npos);
    ++next;
  }
  CHECK(next == 5);
}

TEST_CASE("what is of one cause stands under it, numbered on") {
  const Table findings = findings_of_tall_wall();
  REQUIRE(findings.rows.size() > 3);
  CHECK(text_in(findings, 0, "number") == "1");
  CHECK(text_in(findings, 1, "number") == "1.2");
  CHECK(text_in(findings, 1, "group") == text_in(findings, 0, "group"));
}
