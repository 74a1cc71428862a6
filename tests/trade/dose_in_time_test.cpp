// The dose as it was at any moment, held to the field of a face of which nothing later is known.
#include <doctest/doctest.h>

#include <cmath>

#include "random_face.h"
#include "trade/dose/dose_in_time.h"

using namespace rb;
using namespace rb::trade;
using test::Random;

namespace {

// Of all layers together: area, area under a dose and seconds x area.
struct Sums {
  double area = 0, under = 0, weighed = 0;
};

Sums sums(const DoseField& field, const std::vector<Band>& bands) {
  const DoseShares shares = dose_shares(field, bands, seconds(90));
  const double area = shares.area.value();
  return {area, shares.under.value(), shares.mean ? area * shares.mean->count() : 0};
}

std::vector<Band> all_of(const Face& face) {
  std::vector<Band> bands;
  for (std::size_t bay = 0; bay < face.tops.size(); ++bay) {
    bands.push_back({metres(0), metres(100)});
  }
  return bands;
}

Sums sums(const std::vector<DoseInTime::Layer>& layers, const std::vector<Band>& bands) {
  Sums all;
  for (const DoseInTime::Layer& layer : layers) {
    const Sums one = sums(layer.field, bands);
    all.area += one.area;
    all.under += one.under;
    all.weighed += one.weighed;
  }
  return all;
}

}  // namespace

TEST_CASE("the dose of a moment is that of a face of which nothing later is known") {
  for (int seed = 0; seed < 300; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed));
    const Face face = test::random_face(random);
    const auto bands = all_of(face);
    DoseInTime dose{face};
    // To and fro, as a finger goes.
    for (int look = 0; look < 12; ++look) {
      const Seconds moment = seconds(random.between(-100, 9000));
      CAPTURE(moment.count());
      const Sums got = sums(dose.at(moment), bands);
      const Sums wanted = sums(dose_field(as_of(face, moment)), bands);
      REQUIRE(got.area == doctest::Approx(wanted.area).epsilon(1e-9));
      REQUIRE(got.under == doctest::Approx(wanted.under).epsilon(1e-6));
      REQUIRE(got.weighed == doctest::Approx(wanted.weighed).epsilon(1e-9));
    }
  }
}

TEST_CASE("at the end it is the whole field, and before the pour nothing") {
  Random random(7);
  const Face face = test::random_face(random);
  const auto bands = all_of(face);
  DoseInTime dose{face};
  CHECK(sums(dose.at(seconds(1e9)), bands).weighed ==
        doctest::Approx(sums(dose_field(face), bands).weighed));
  CHECK(sums(dose.at(seconds(-1e6)), bands).area == 0);
}

TEST_CASE("a layer in which nothing happened keeps its number, another gets one of its own") {
  Face face;
  face.bays = {metres(2)};
  TopCurve& top = face.tops.emplace_back();
  top.stand(seconds(0));
  top.read(seconds(600), metres(2));
  face.sides = {
      {{metres(1), metres(0.25), metres(1), metres(0.2), {{seconds(300), seconds(400)}}}}};
  face.sets = {{seconds(-1e9), seconds(18000)}};
  DoseInTime dose{face};
  const auto turns = [&](double moment) {
    std::vector<std::uint64_t> all;
    for (const auto& layer : dose.at(seconds(moment))) all.push_back(layer.turn);
    return all;
  };
  const auto before = turns(250);  // concrete at 0.83 m, nothing ran
  REQUIRE(before.size() == 4);
  const auto running = turns(350);
  CHECK(running[0] != before[0]);  // shaken
  CHECK(running[1] != before[1]);  // filled on
  CHECK(running[2] != before[2]);
  CHECK(running[3] == before[3]);  // no concrete yet
  const auto later = turns(410);
  const auto last = turns(420);
  CHECK(later[0] == last[0]);
  CHECK(later[1] == last[1]);
  CHECK(later[2] != last[2]);
}

TEST_CASE("a spot's story as of a moment is the beginning of its whole story") {
  int told = 0;
  for (int seed = 0; seed < 200; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed) + 1000);
    const Face face = test::random_face(random);
    const Seconds moment = seconds(random.between(100, 4000));
    const Length x = metres(random.between(0.1, face.length().value() - 0.1));
    const Length z = metres(random.between(0.05, 2));
    const auto story = spot_story(as_of(face, moment), 0, x, z);
    const auto whole = spot_story(face, 0, x, z);
    CHECK(story.has_value() == (whole && whole->came <= moment));
    if (!story) continue;
    ++told;
    CHECK(story->came.count() == doctest::Approx(whole->came.count()).epsilon(1e-12));
    CHECK(story->dose <= whole->dose + seconds(1e-9));
    CHECK(story->shaken.size() <= whole->shaken.size());
  }
  CHECK(told > 20);
}
