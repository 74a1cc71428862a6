#include "trade/shape/patch.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <vector>

using namespace rb;
using namespace rb::trade;

namespace {

Patch patch(double x, double z, double w, double h) {
  return {metres(x), metres(z), metres(w), metres(h)};
}
double area(const std::vector<Patch>& patches, const Patch& within) {
  return in_square_metres(covered(patches, within));
}

}  // namespace

TEST_CASE("patches cover what lies of them in the rectangle, where they overlap once") {
  const Patch face = patch(0, 0, 4, 2);
  CHECK(area({}, face) == 0);
  CHECK(area({patch(1, 0.5, 1, 1)}, face) == doctest::Approx(1));
  CHECK(area({patch(3, 1, 5, 5)}, face) == doctest::Approx(1));  // reaches out of it
  CHECK(area({patch(5, 0, 1, 1)}, face) == 0);                   // beside it
  CHECK(area({patch(0, 2, 4, 1)}, face) == 0);                   // on top of it
  CHECK(area({patch(1, 0.5, 1, 1), patch(1.5, 0.5, 1, 1)}, face) == doctest::Approx(1.5));
  CHECK(area({patch(1, 0.5, 1, 1), patch(1, 0.5, 1, 1)}, face) == doctest::Approx(1));
  CHECK(area({patch(0, 0, 4, 2), patch(1, 1, 1, 1)}, face) == doctest::Approx(8));
  CHECK(area({patch(1, 0, 1, 2), patch(0, 0.5, 4, 1)}, face) == doctest::Approx(5));  // a cross
}

TEST_CASE("random patches cover as much as counting fine squares says") {
  std::mt19937 dice(11);
  std::uniform_int_distribution<int> at(-2, 11), size(1, 6), many(1, 6);
  const Patch face = patch(0, 0, 1.0, 1.0);
  for (int i = 0; i < 300; ++i) {
    std::vector<Patch> patches;  // on a grid of tenths, so that squares tell exactly
    for (int n = many(dice); n > 0; --n) {
      patches.push_back(patch(at(dice) / 10., at(dice) / 10., size(dice) / 10., size(dice) / 10.));
    }
    int squares = 0;
    for (int x = 0; x < 10; ++x) {
      for (int z = 0; z < 10; ++z) {
        const Length mx = metres((x + 0.5) / 10);
        const Length mz = metres((z + 0.5) / 10);
        squares += std::any_of(patches.begin(), patches.end(),
                               [&](const Patch& p) { return holds_x(p, mx) && holds_z(p, mz); });
      }
    }
    CHECK(area(patches, face) == doctest::Approx(squares / 100.));
  }
}
