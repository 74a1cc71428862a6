// What was found is accepted or sent back by touch, by name; what is accepted comes back when its
// figures change.
#include <doctest/doctest.h>

#include "check/review.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;

namespace {

Tablet demo() {
  const auto events = events_of(RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl",
                                Moment{} + std::chrono::hours{24 * 365 * 100});
  return Tablet{events, events.back().at + std::chrono::hours{8}};
}

}  // namespace

TEST_CASE("two findings: one accepted, one sent back with a reason, both by taps") {
  Tablet tablet = demo();
  REQUIRE(by_cause(tablet.report.findings).size() == 2);
  tablet.tap_id("attention");
  tablet.tap_id("of cause 0");
  tablet.tap_id("review accept");
  REQUIRE(tablet.state->reviews.size() == 1);
  CHECK(tablet.state->reviews.front().accepted);
  CHECK(tablet.says("1 open, 1 accepted, 0 sent back"));
  CHECK(tablet.says("accepted by"));
  tablet.tap_id("of cause 1");
  tablet.tap_id("review send-back");
  tablet.type("cores wanted");
  tablet.tap("KEEP");
  REQUIRE(tablet.state->reviews.size() == 2);
  CHECK_FALSE(tablet.state->reviews.back().accepted);
  CHECK(tablet.says("0 open, 1 accepted, 1 sent back"));
  CHECK(tablet.says("sent back by"));
  // A second tap on what is accepted has nothing to do.
  tablet.tap_id("of cause 0");
  const auto* accept = tablet.find_id("review accept");
  REQUIRE(accept != nullptr);
  CHECK_FALSE(accept->target.enabled);
  const Review review = review_of(*tablet.state, tablet.report);
  CHECK(review.open == 0);
  CHECK(review.accepted == 1);
  CHECK(review.sent_back == 1);
}
