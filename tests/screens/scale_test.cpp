#include "screens/glass/scale.h"

#include <doctest/doctest.h>

#include "screens/live/pour_layout.h"

using namespace rb::screens;

TEST_CASE("15 mm is 15 mm on every density") {
  // 1280 x 800 over 10.1 inches: 1509.4 px over 256.5 mm.
  const Scale tablet(1280, 800);
  CHECK(tablet.px_per_mm() == doctest::Approx(5.884).epsilon(0.001));
  CHECK(tablet.target() == 89);
  const Scale fine(1920, 1200);
  CHECK(fine.target() / fine.px_per_mm() >= 15.0);
  CHECK(fine.target() / fine.px_per_mm() < 15.2);
  CHECK(Scale(1280, 800, 8.0).target() > tablet.target());
}

TEST_CASE("a slip in the screen size is kept within what a tablet can be") {
  CHECK(Scale(1280, 800, 0) == Scale(1280, 800, 4));
  CHECK(Scale(0, 0).px_per_mm() > 0);
}

TEST_CASE("the rows are never covered by what opens over the pour") {
  for (const auto& [w, h] : {std::pair{1280, 800}, {1920, 1200}, {1024, 768}, {800, 1280}}) {
    for (const double aspect : {0.3, 1.0, 4.0}) {
      for (const bool light : {false, true}) {
        for (const HandSide hand : {HandSide::left, HandSide::right}) {
          const Scale scale(w, h);
          const PourLayout out = lay_out_pour(scale, aspect, hand, light);
          const auto& tried = w;
          CAPTURE(tried);
          CAPTURE(aspect);
          CHECK_FALSE(out.rows.overlaps(out.work));
          CHECK_FALSE(out.rows.overlaps(out.typing));
          CHECK_FALSE(out.rows.overlaps(out.attention));
          CHECK(out.light.empty() == !light);
          CHECK_FALSE(out.rows.overlaps(out.light));
          CHECK_FALSE(out.work.overlaps(out.light));
          CHECK(gap_between(out.rows, out.work) >= scale.gap());
          for (const Box& part : {out.elevation, out.lift, out.taps}) {
            CHECK(out.work.holds(part));
            CHECK(part.w() > scale.mm(25));
            CHECK(part.h() > scale.mm(20));
          }
        }
      }
    }
  }
}
