// Findings accepted and sent back: the key and the digest of their figures are the same after a
// replay; an acceptance holds for the figures it was given for, and no others.
#include <doctest/doctest.h>

#include "check/review.h"
#include "pour/log/script.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// A row that ran for a minute only.
Pour short_run() {
  Pour pour;
  pour.at(0, hang("R1")).load("T1", 2.0, -1800, 600, 1500);
  pour.placed(1, 600, 1200, 0.6).ran("R1", 1300, 1350);
  pour.at(5400, kClose);
  return pour;
}

const ReviewedGroup& group(const Review& review, const std::string& rule) {
  for (const ReviewedGroup& g : review.groups) {
    if (g.key.starts_with(rule + "/")) return g;
  }
  FAIL("no group of ", rule);
  return review.groups.front();
}

std::string accept(const ReviewedGroup& g) {
  return R"("do":"accept","finding":")" + g.key + R"(","figures":")" + g.figures.digits +
         R"(","note":"core taken")";
}
std::string send_back(const ReviewedGroup& g) {
  return R"("do":"send-back","finding":")" + g.key + R"(","figures":")" + g.figures.digits +
         R"(","reason":"explain")";
}

Review review(const Pour& pour) {
  const Checked seen = pour.checked();
  return review_of(seen.state, seen.report);
}

}  // namespace

TEST_CASE("every group is open at first, and open ones are counted") {
  const Checked seen = short_run().checked();
  const Review all = review_of(seen.state, seen.report);
  CHECK(all.groups.size() == by_cause(seen.report.findings).size());
  CHECK(all.open == all.groups.size());
  std::size_t findings = 0;
  for (const ReviewedGroup& g : all.groups) {
    CHECK(g.first == findings);
    findings += g.count;
    CHECK(g.figures.bytes() == 8);
  }
  CHECK(findings == seen.report.findings.size());
}

TEST_CASE("an accepted finding says by whom, when and why, and is counted so") {
  Pour pour = short_run();
  const Review before = review(pour);
  pour.at(6000, accept(group(before, "run-short")));
  const Checked seen = pour.checked();
  const Review after = review_of(seen.state, seen.report);
  const ReviewedGroup& g = group(after, "run-short");
  CHECK(g.standing == Standing::accepted);
  CHECK(after.accepted == 1);
  CHECK(after.open == before.open - 1);
  REQUIRE(g.last);
  CHECK(seen.state.reviews[*g.last].why == "core taken");
  CHECK(seen.state.moment(seen.state.reviews[*g.last].at) == *parse_moment(pour.moment(6000)));
}

TEST_CASE(
    "an accepted finding comes back if its figures change, and stays accepted if they do not") {
  Pour pour = short_run();
  pour.at(6000, accept(group(review(pour), "run-short")));
  Pour same = pour;
  same.at(6100, R"("do":"note","text":"the crew was told")");
  CHECK(group(review(same), "run-short").standing == Standing::accepted);
  // The rest was tapped 10 s late: it ran shorter still.
  Pour changed = pour;
  changed.changed(R"("do":"rest")", R"("do":"rest")", R"("id":"r","do":"rest")");
  changed.at(6200, R"("do":"fix","target":"r","set":{"at":")" + changed.moment(1340) +
                       R"("},"why":"tapped late")");
  const ReviewedGroup back = group(review(changed), "run-short");
  CHECK(back.standing == Standing::open);
  CHECK(back.came_back());
  // Put right again, it is the finding that was accepted.
  changed.at(6300, R"("do":"fix","target":"r","set":{"at":")" + changed.moment(1350) +
                       R"("},"why":"no, it was not")");
  CHECK(group(review(changed), "run-short").standing == Standing::accepted);
}

TEST_CASE("sent back, accepted, sent back: the last word for these figures stands") {
  Pour pour = short_run();
  const ReviewedGroup g = group(review(pour), "run-short");
  pour.at(6000, send_back(g));
  CHECK(group(review(pour), "run-short").standing == Standing::sent_back);
  CHECK(review(pour).sent_back == 1);
  pour.at(6100, accept(g));
  CHECK(group(review(pour), "run-short").standing == Standing::accepted);
  pour.at(6200, send_back(g));
  CHECK(group(review(pour), "run-short").standing == Standing::sent_back);
}

TEST_CASE("key and figures are the same after a replay, and in whatever order a group stands") {
  const Checked seen = short_run().checked();
  const auto again = read_script(short_run().script(), "again");
  REQUIRE(again);
  const Review one = review_of(seen.state, seen.report);
  const Review other = review(short_run());
  CHECK(one == other);
  std::vector<Finding> turned(seen.report.findings.rbegin(), seen.report.findings.rend());
  CHECK(figures_of(seen.state, turned) == figures_of(seen.state, seen.report.findings));
  // FNV-1a of nothing is its offset basis (draft-eastlake-fnv, from memory).
  CHECK(figures_of(seen.state, {}).digits == "cbf29ce484222325");
  turned.front().measured = amount(seconds(61), Measure::span);
  CHECK(figures_of(seen.state, turned) != figures_of(seen.state, seen.report.findings));
}

TEST_CASE("a figure that grows by itself does not undo an acceptance") {
  PlanText plan;
  plan.element = R"("cure_start_within_s":3600)";
  Pour pour{plan};
  pour.placed(1, 600, 1200, 0.6).placed(2, 1300, 1800, 1.2).placed(3, 1900, 2400, 1.8);
  pour.at(3000, kClose);
  const auto at = [&](double seconds) {
    const Checked seen = pour.live(seconds);
    return group(review_of(seen.state, seen.report), "cure-late");
  };
  CHECK(at(9000).figures == at(12000).figures);
}

TEST_CASE("who signs names what is neither accepted nor a note") {
  Pour pour = short_run();
  const Review open = review(pour);
  const auto named = to_be_named(open);
  CHECK_FALSE(named.empty());
  for (const std::string& key : named) CHECK_FALSE(key.starts_with("unsigned"));
  event::Sign sign;
  CHECK(unnamed(open, sign) == named);
  sign.open = named;
  CHECK(unnamed(open, sign).empty());
  sign.open.erase(sign.open.begin());
  CHECK(unnamed(open, sign).size() == 1);
  pour.at(6000, accept(group(open, "run-short")));
  CHECK(to_be_named(review(pour)).size() == named.size() - 1);
}

TEST_CASE("a pour that changed after it was signed asks for a signature again") {
  Pour pour = good_pour();
  CHECK_FALSE(pour.checked().has("unsigned"));
  Pour stripped = pour;
  stripped.at(90000, R"("do":"strip","element":"W1","side":"near")");
  stripped.at(90100, R"("do":"photo","element":"W1","name":"a.jpg","bytes":10,"sha256":")" +
                         std::string(64, 'a') + '"');
  CHECK_FALSE(stripped.checked().has("unsigned"));
  Pour noted = pour;
  noted.at(90000, R"("do":"note","text":"the second truck was turned away")");
  const Checked seen = noted.checked();
  const auto asked = seen.of("unsigned");
  REQUIRE(asked.size() == 2);
  CHECK(seen.says(asked[0]).find("signed by the foreman before events that may change it: 1") !=
        std::string::npos);
  noted.at(90100, sign("foreman")).at(90200, sign("inspector"));
  CHECK_FALSE(noted.checked().has("unsigned"));
}
