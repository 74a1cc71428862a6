// Claims that hold for every pour, tried on thousands of random ones. Seeds are fixed; a failure
// prints its own.
#include <doctest/doctest.h>

#include <cmath>

#include "random_face.h"

using namespace rb;
using namespace rb::trade;
using test::Random;

namespace {

constexpr int kFaces = 3000;

std::vector<Band> whole(const Face& face) {
  std::vector<Band> bands;
  for (const TopCurve& top : face.tops) bands.push_back({metres(0), top.standing()});
  return bands;
}

double mean(const Face& face) {
  const auto shares = dose_shares(dose_field(face), whole(face), seconds(90));
  return shares.mean ? in_seconds(*shares.mean) : 0;
}

double under(const Face& face) {
  return dose_shares(dose_field(face), whole(face), seconds(90)).under_share().value_or(0);
}

template <class Change>
Face changed(Face face, Change change) {
  for (auto& side : face.sides) {
    for (Shaker& shaker : side) change(shaker);
  }
  return face;
}

}  // namespace

TEST_CASE("dose never exceeds the time the rows of the side ran") {
  for (int seed = 0; seed < kFaces; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed));
    const Face face = test::random_face(random);
    double most = 0;
    for (const auto& side : face.sides) {
      std::vector<Interval> all;
      for (const Shaker& s : side) all.insert(all.end(), s.running.begin(), s.running.end());
      most = std::max(most, in_seconds(RunningTime{all}.within(seconds(-1e9), seconds(1e9))));
    }
    for (const DoseStrip& strip : dose_field(face).strips) {
      for (const DosePiece& piece : strip.pieces) {
        REQUIRE(in_seconds(std::max(piece.d0, piece.d1)) <= most + 1e-6);
        REQUIRE(in_seconds(std::min(piece.d0, piece.d1)) >= -1e-9);
      }
    }
  }
}

TEST_CASE("more running never lowers the dose") {
  for (int seed = 0; seed < kFaces; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed));
    const Face face = test::random_face(random);
    const double from = random.between(0, 4000);
    const Interval more{seconds(from), seconds(from + random.between(1, 200))};
    const Face longer = changed(face, [&](Shaker& s) {
      std::vector<Interval> spans = s.running.spans();
      spans.push_back(more);
      s.running = spans;
    });
    REQUIRE(mean(longer) >= mean(face) - 1e-6);
    REQUIRE(under(longer) <= under(face) + 1e-9);
  }
}

TEST_CASE("splitting a run at any instant changes nothing") {
  for (int seed = 0; seed < kFaces; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed));
    const Face face = test::random_face(random);
    const Face split = changed(face, [&](Shaker& s) {
      if (s.running.empty()) return;
      std::vector<Interval> spans = s.running.spans();
      Interval& first = spans.front();
      const Seconds cut = first.from + (first.to - first.from) * random.between(0, 1);
      const Interval rest{cut, first.to};
      first.to = cut;
      spans.push_back(rest);
      s.running = spans;
    });
    REQUIRE(mean(split) == doctest::Approx(mean(face)).epsilon(1e-9));
    REQUIRE(under(split) == doctest::Approx(under(face)).epsilon(1e-9));
  }
}

TEST_CASE("shifting all times changes nothing") {
  for (int seed = 0; seed < kFaces; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed));
    const Face face = test::random_face(random);
    const Seconds by = seconds(random.between(-1e5, 1e5));
    Face shifted = changed(face, [&](Shaker& s) {
      std::vector<Interval> spans = s.running.spans();
      for (Interval& run : spans) run = {run.from + by, run.to + by};
      s.running = spans;
    });
    for (TopCurve& top : shifted.tops) {
      TopCurve moved;
      for (const SurfacePoint& p : top.points()) moved.read(p.at + by, p.height);
      top = moved;
    }
    for (SetStep& step : shifted.sets) {
      step.from += by;
      if (step.at) *step.at += by;
    }
    REQUIRE(mean(shifted) == doctest::Approx(mean(face)).epsilon(1e-6));
    REQUIRE(under(shifted) == doctest::Approx(under(face)).epsilon(1e-6));
  }
}

TEST_CASE("the exact field agrees with a fine simulation of single spots, to its step") {
  constexpr double kStep = 0.5;
  int compared = 0;
  for (int seed = 0; seed < 400; ++seed) {
    Random random(static_cast<std::uint64_t>(seed) + 100000);
    const Face face = test::random_face(random);
    const DoseField field = dose_field(face);
    const auto cells = static_cast<int>(std::floor(face.length().value() / 0.05 + 1e-6));
    for (int spot = 0; spot < 4; ++spot) {
      const double x = (random.whole(0, cells - 1) + 0.5) * 0.05;
      const double z = random.between(0.001, 3);
      CAPTURE(seed);
      CAPTURE(x);
      CAPTURE(z);
      const auto exact = test::field_dose(field, x, z);
      const auto stepped = test::simulated_dose(face, x, z, kStep);
      REQUIRE(exact.has_value() == stepped.has_value());
      if (!exact) continue;
      ++compared;
      // Each edge of a run, and coming and setting, may be off by a step.
      REQUIRE(std::abs(*exact - *stepped) <= 14 * kStep);
    }
  }
  CHECK(compared > 300);
}

TEST_CASE("a lift's field is the face's, and what does not touch the lift leaves its part equal") {
  for (int seed = 0; seed < kFaces; ++seed) {
    CAPTURE(seed);
    Random random(static_cast<std::uint64_t>(seed) + 300000);
    const Face face = test::random_face(random);
    std::vector<Band> bands;
    for (const TopCurve& top : face.tops) {
      const Length from = top.standing() * random.between(0, 1);
      bands.push_back({from, from + metres(random.between(0, 0.6))});
    }
    const Face part = part_for(face, bands);
    const DoseShares all = dose_shares(dose_field(face), bands, seconds(90));
    for (const Face* of : {&face, &part}) {
      const DoseShares lift = dose_shares(dose_field(*of, bands), bands, seconds(90));
      REQUIRE(lift.area.value() == doctest::Approx(all.area.value()).epsilon(1e-9));
      REQUIRE(lift.under.value() == doctest::Approx(all.under.value()).epsilon(1e-9));
      REQUIRE(lift.least.has_value() == all.least.has_value());
      if (!all.least) continue;
      REQUIRE(in_seconds(*lift.least) == doctest::Approx(in_seconds(*all.least)).epsilon(1e-9));
      REQUIRE(in_seconds(*lift.mean) == doctest::Approx(in_seconds(*all.mean)).epsilon(1e-9));
    }
    REQUIRE(part_for(part, bands) == part);
    const Face later = changed(face, [&](Shaker& s) {
      std::vector<Interval> spans = s.running.spans();
      spans.push_back({seconds(1e6), seconds(1e6 + 60)});
      s.running = spans;
    });
    REQUIRE(part_for(later, bands) == part);
  }
}
