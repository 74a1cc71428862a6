// The list of findings is one card a cause, in the checker's order; the rest of a cause is a tap
// away.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include <array>

#include "tablet.h"

using namespace rb;
using namespace rb::test;

namespace {

Tablet tall_wall() {
  const auto events = events_of(RISEBOOK_SOURCE_DIR "/tests/check/tall_wall.jsonl",
                                Moment{} + std::chrono::hours{24 * 365 * 100});
  return Tablet{events, events.back().at + std::chrono::hours{8}};
}

}  // namespace

TEST_CASE("the tall wall's five causes are the first five cards, in order") {
  Tablet tablet = tall_wall();
  const auto causes = by_cause(tablet.report.findings);
  REQUIRE(causes.size() >= 5);
  CHECK(causes.size() < 15);
  const std::array rules{"head-high", "knit-late", "slump-out", "dose-low", "run-short"};
  // Of the sentence on each card; figures and units stand apart by a space that does not break.
  const std::array figures{"head of 55.2", "lift 6 bay 1: knitted", "ticket 5203: slump 170",
                           "lift 4: 29.", "row R2 (near side): ran 28"};
  std::vector<std::size_t> told;
  tablet.tap_id("attention");
  for (int page = 0; told.size() < 5 && page < 6; ++page) {
    if (page > 0) tablet.tap_id("findings page-down");
    for (const screens::SeenText& text : tablet.ui.probe().texts) {
      for (std::size_t i = 0; i < figures.size(); ++i) {
        if (text.text.find(figures.at(i)) != std::string::npos) told.push_back(i);
      }
    }
  }
  REQUIRE(told.size() == 5);
  for (std::size_t i = 0; i < 5; ++i) {
    CHECK(told[i] == i);
    CHECK(causes[i].front().rule == rules.at(i));
  }
}

TEST_CASE("a cause opens to its own findings and closes to where one was") {
  Tablet tablet = tall_wall();
  const auto causes = by_cause(tablet.report.findings);
  tablet.tap_id("attention");
  REQUIRE(causes.front().size() > 1);
  const std::string first = "head of 55.2";
  CHECK_FALSE(tablet.says("lift 9: rose"));
  tablet.tap_id("of cause 0");
  CHECK(tablet.says(fmt::format("{} findings of one cause", causes.front().size())));
  for (int page = 0; page < 4 && !tablet.says("lift 9: rose"); ++page) {
    tablet.tap_id("findings page-down");
  }
  CHECK(tablet.says("lift 9: rose"));
  tablet.tap_id("all findings");
  CHECK_FALSE(tablet.says("lift 9: rose"));
  CHECK(tablet.says(first));
}
