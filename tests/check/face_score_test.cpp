// The stripped face against the log: areas reckoned by hand.
#include "check/face/face_score.h"

#include <doctest/doctest.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// 4 m of two bays, 1.2 m up; a hole of 1 x 0.3 m at its upper right: 4.8 - 0.3 = 4.5 m2.
Pour stripped_wall(const std::string& more = {}) {
  PlanText plan;
  plan.openings = R"([{"x":3,"z":0.9,"w":1,"h":0.3}])";
  plan.element = more;
  return Pour{plan}
      .placed(1, 0, 600, 0.6)
      .placed(2, 700, 1300, 1.2)
      .at(200000, R"("do":"strip","element":"W1","side":"near")");
}

std::string blemish(const std::string& box, const std::string& side = "near") {
  return R"("do":"blemish","element":"W1","side":")" + side + R"(","kind":"honeycomb",)" + box;
}

Finding of(const std::string& rule, std::optional<int> lift, std::optional<std::size_t> bay = {},
           std::optional<std::size_t> row = {}) {
  Finding finding;
  finding.rule = rule;
  finding.element = 0;
  finding.lift = lift;
  finding.bay = bay;
  finding.row = row;
  return finding;
}

double m2(Area area) {
  return in_square_metres(area);
}

// Only what the test says the checker found.
FaceScore score(const Pour& pour, std::vector<Finding> findings, Side side = Side::near_side) {
  CheckReport report;
  report.findings = std::move(findings);
  return score_face(pour.checked().state, report, 0, side);
}

}  // namespace

TEST_CASE("not stripped, not inspected, begun and nothing found are four different things") {
  const Pour bare = Pour{}.placed(1, 0, 600, 0.6);
  CHECK(score(bare, {}).look == FaceLook::standing);
  CHECK(score(stripped_wall(), {}).look == FaceLook::stripped);
  CHECK(score(stripped_wall(), {}, Side::far_side).look == FaceLook::standing);
  Pour found = stripped_wall().at(200060, blemish(R"("x":1,"z":0.1,"w":0.5,"h":0.2)"));
  CHECK(score(found, {}).look == FaceLook::begun);
  const std::string inspected = R"("do":"inspect","element":"W1","side":"near")";
  const FaceScore clean = score(stripped_wall().at(200060, inspected), {});
  CHECK(clean.look == FaceLook::inspected);
  CHECK(m2(clean.blemished) == 0);
  CHECK_FALSE(clean.foretold());
  CHECK(score(found.at(200120, inspected), {}).look == FaceLook::inspected);
}

TEST_CASE("blemished area is shared out by where the checker had spoken") {
  Pour pour = stripped_wall();
  CHECK(m2(score(pour, {}).face) == about(4.5));
  // Too little vibration of bay 1 of lift 2: 2 x 0.6 m.
  const std::vector<Finding> low{of("dose-low", 2, 0)};
  CHECK(m2(score(pour, low).spoken) == about(1.2));
  CHECK(*score(pour, low).spoken_share() == about(1.2 / 4.5));
  // 1 x 0.4 m, of it 0.5 x 0.3 m there.
  pour.at(200060, blemish(R"("x":1.5,"z":0.5,"w":1,"h":0.4)"));
  CHECK(m2(score(pour, low).blemished) == about(0.4));
  CHECK(m2(score(pour, low).blemished_spoken) == about(0.15));
  // Half over it: 0.2 x 0.4 m more, none of it there.
  pour.at(200061, blemish(R"("x":2.3,"z":0.5,"w":0.4,"h":0.4)"));
  CHECK(m2(score(pour, low).blemished) == about(0.48));
  CHECK(m2(score(pour, low).blemished_spoken) == about(0.15));
  // A triangle of 0.5 m2, of which 0.4 x 0.4 / 2 lies below the lift.
  pour.at(200062, blemish(R"("x":0,"z":0.2,"w":1,"h":1,"outline":[[0,1.2],[1,1.2],[0,0.2]])"));
  CHECK(m2(score(pour, low).blemished) == about(0.98));
  CHECK(m2(score(pour, low).blemished_spoken) == about(0.57));
  // Over the hole and above the concrete: 1 x 0.1 m of it is face.
  pour.at(200063, blemish(R"("x":3,"z":0.8,"w":1,"h":0.8)"));
  const FaceScore all = score(pour, low);
  CHECK(m2(all.blemished) == about(1.08));
  CHECK(*all.foretold() == about(0.57 / 1.08));
  // The other face has none of it.
  CHECK(m2(score(pour, low, Side::far_side).blemished) == 0);
  CHECK(m2(score(pour, low, Side::far_side).spoken) == about(1.2));
}

TEST_CASE("a finding speaks of a place only where it names one, and of the concrete") {
  const Pour pour = stripped_wall();
  CHECK(m2(score(pour, {of("cure-late", {})}).spoken) == 0);         // all of it, so no place
  CHECK(m2(score(pour, {of("gate-passed", 1)}).spoken) == 0);        // paper
  CHECK(m2(score(pour, {of("head-high", {}, {}, 0)}).spoken) == 0);  // people
  CHECK(m2(score(pour, {of("dose-low", 3)}).spoken) == 0);           // never placed
  CHECK(m2(score(pour, {of("no-such-rule", 1)}).spoken) == 0);
  // A joint is told of from 0.15 m below it: 4 x 0.75 m less the hole.
  CHECK(m2(score(pour, {of("knit-late", 2)}).spoken) == about(4 * 0.75 - 0.3));
  // R1 reaches all of it, 1.2 m up; with lift 1 what both name.
  CHECK(m2(score(pour, {of("row-missed", {}, {}, 0)}).spoken) == about(4.5));
  CHECK(m2(score(pour, {of("row-missed", 1, {}, 0)}).spoken) == about(2.4));
  // Two that speak of the same speak of it once.
  CHECK(m2(score(pour, {of("dose-low", 1), of("row-missed", 1, {}, 0)}).spoken) == about(2.4));
}

TEST_CASE("a row speaks of the face behind it through a thin wall only") {
  Pour thick = stripped_wall();
  thick.plan.thickness = 0.5;
  const std::vector<Finding> missed{of("row-missed", 1, {}, 0)};
  CHECK(m2(score(stripped_wall(), missed, Side::far_side).spoken) == about(2.4));
  CHECK(m2(score(thick, missed, Side::near_side).spoken) == about(2.4));
  CHECK(m2(score(thick, missed, Side::far_side).spoken) == 0);
}

TEST_CASE("what was found of a wall nobody vibrated speaks of its blemish") {
  const Checked seen =
      stripped_wall().at(200060, blemish(R"("x":1,"z":0.1,"w":0.5,"h":0.2)")).checked();
  const FaceScore scored = score_face(seen.state, seen.report, 0, Side::near_side);
  CHECK(m2(scored.blemished) == about(0.1));
  CHECK(*scored.foretold() == about(1));
  CHECK_FALSE(
      speaking_of(seen.state, seen.report, 0, Side::near_side, metres(1.2), metres(0.2)).empty());
  CHECK(speaking_of(seen.state, seen.report, 0, Side::near_side, metres(1.2), metres(1.7)).empty());
}
