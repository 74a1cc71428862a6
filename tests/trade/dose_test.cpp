#include "trade/dose/dose.h"

#include <doctest/doctest.h>

using namespace rb;
using namespace rb::trade;

namespace {

// One bay of 1 m, filled from 0 to 1 m in 1000 s, then standing; one motor reaching all of it.
Face plain_face(std::vector<Interval> running) {
  Face face;
  face.bays = {metres(1)};
  face.tops.resize(1);
  face.tops[0].stand(seconds(0));
  face.tops[0].read(seconds(1000), metres(1));
  face.sides = {{{metres(0.5), metres(0.5), metres(0.6), metres(0.6), std::move(running)}}};
  face.sets = {{seconds(-1e9), seconds(18000)}};
  return face;
}

const std::vector<Band> kWhole{{metres(0), metres(1)}};

}  // namespace

TEST_CASE("a run after the lift doses all of it the same") {
  const DoseField field = dose_field(plain_face({{seconds(1100), seconds(1200)}}));
  const DoseShares shares = dose_shares(field, kWhole, seconds(90));
  CHECK(in_square_metres(shares.area) == doctest::Approx(1));
  CHECK(*shares.under_share() == 0);
  CHECK(in_seconds(*shares.least) == doctest::Approx(100));
  CHECK(in_seconds(*shares.mean) == doctest::Approx(100));
}

TEST_CASE("a run during placing doses what is there, and less of what comes while it runs") {
  // Worked by hand: run from 400 to 500 s. Concrete below 0.4 m gets 100 s, above 0.5 m none,
  // between 100 s falling to none: under 90 s from z = 0.41 m up.
  const DoseField field = dose_field(plain_face({{seconds(400), seconds(500)}}));
  const DoseShares shares = dose_shares(field, kWhole, seconds(90));
  CHECK(*shares.under_share() == doctest::Approx(0.59));
  CHECK(in_seconds(*shares.least) == doctest::Approx(0));
  CHECK(in_seconds(*shares.mean) == doctest::Approx(45));
  const auto patch = worst_patch(field, kWhole, seconds(90));
  REQUIRE(patch);
  CHECK(in_metres(patch->box.z) == doctest::Approx(0.41));
  CHECK(in_metres(patch->box.h) == doctest::Approx(0.59));
  CHECK(in_metres(patch->box.w) == doctest::Approx(1));
}

TEST_CASE("a dose of exactly the least is not under it") {
  const DoseField field = dose_field(plain_face({{seconds(1100.1), seconds(1190.1)}}));
  CHECK(*dose_shares(field, kWhole, seconds(90)).under_share() == 0);
}

TEST_CASE("overlapping runs count once") {
  Face face = plain_face({{seconds(1100), seconds(1200)}});
  face.sides[0].push_back(face.sides[0][0]);
  face.sides[0][1].running = {{seconds(1150), seconds(1250)}};
  const DoseShares shares = dose_shares(dose_field(face), kWhole, seconds(90));
  CHECK(in_seconds(*shares.mean) == doctest::Approx(150));
}

TEST_CASE("what runs after concrete has set does not count") {
  Face face = plain_face({{seconds(1100), seconds(1200)}});
  face.sets = {{seconds(-1e9), seconds(650)}};
  // Set at came + 650 s: z = 0.45 m came at 450 and sets as the run begins; z = 0.55 m as it ends.
  const DoseField field = dose_field(face);
  const auto under = dose_shares(field, kWhole, seconds(90)).under_share();
  CHECK(*under == doctest::Approx(0.54));
}

TEST_CASE("thin sections count the best side of a spot, thick ones the worst") {
  Face face = plain_face({{seconds(1100), seconds(1200)}});
  face.sides.push_back(face.sides[0]);
  face.sides[1][0].running = {{seconds(1100), seconds(1140)}};
  CHECK(in_seconds(*dose_shares(dose_field(face), kWhole, seconds(90)).mean) ==
        doctest::Approx(100));
  face.worst_side_counts = true;
  CHECK(in_seconds(*dose_shares(dose_field(face), kWhole, seconds(90)).mean) ==
        doctest::Approx(40));
}

TEST_CASE("an opening holds no concrete") {
  Face face = plain_face({});
  face.openings = {{metres(0.25), metres(0.2), metres(0.5), metres(0.5)}};
  const DoseShares shares = dose_shares(dose_field(face), kWhole, seconds(90));
  CHECK(in_square_metres(shares.area) == doctest::Approx(0.75));
  CHECK_FALSE(spot_story(face, 0, metres(0.5), metres(0.4)));
}

TEST_CASE("the edge of reach is within reach") {
  Face face = plain_face({{seconds(1100), seconds(1200)}});
  face.sides[0][0].reach_x = metres(0.475);  // to the middle of the first and last cell
  CHECK(*dose_shares(dose_field(face), kWhole, seconds(90)).under_share() == doctest::Approx(0));
  face.sides[0][0].reach_x = metres(0.474);
  CHECK(*dose_shares(dose_field(face), kWhole, seconds(90)).under_share() == doctest::Approx(0.1));
}

TEST_CASE("a length that is no multiple of the cell ends in a narrower cell") {
  Face face = plain_face({{seconds(1100), seconds(1200)}});
  face.bays = {metres(1.02)};
  CHECK(in_square_metres(dose_shares(dose_field(face), kWhole, seconds(90)).area) ==
        doctest::Approx(1.02));
}

TEST_CASE("a spot's story tells when it filled, shook and set") {
  Face face = plain_face({{seconds(400), seconds(500)}, {seconds(1100), seconds(1160)}});
  face.sides[0].push_back(face.sides[0][0]);
  face.sides[0][1].running = {{seconds(1150), seconds(1200)}};
  const auto story = spot_story(face, 0, metres(0.5), metres(0.45));
  REQUIRE(story);
  CHECK(in_seconds(story->came) == doctest::Approx(450));
  CHECK(in_seconds(story->sets) == doctest::Approx(18450));
  CHECK(in_seconds(story->dose) == doctest::Approx(150));
  REQUIRE(story->shaken.size() == 4);
  CHECK(story->shaken[2].shakers == std::vector<std::size_t>{0, 1});
}
