// volume-off by the shape of what stands, and by loads that go to several elements or back.
#include <doctest/doctest.h>

#include "pour/outlook/form.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

// pi / 4 x 0.9^2 x 0.9 = 0.5726 m3 of a round column, 0.729 m3 of a square one; a wall that goes
// from 0.25 m to 0.15 m over 1.8 m holds 4 x 0.6 x (0.25 + 0.2167) / 2 = 0.56 m3 in its lowest 0.6
// m.
TEST_CASE("the volume that stands goes by the section: round, and tapered") {
  PlanText round{.kind = "column",
                 .length = 0.9,
                 .height = 4.5,
                 .thickness = 0.9,
                 .bays = "[0.9]",
                 .lifts = "[0.9,1.8,2.7,3.6,4.5]",
                 .rows = {},
                 .element = R"("section":"round")"};
  const auto off = [](const PlanText& plan, double top, double volume) {
    return Pour{plan}.placed(1, 0, 600, top).load("T1", volume, -600, 0, 500).checked();
  };
  CHECK_FALSE(off(round, 0.9, 0.5726).has("volume-off"));
  CHECK(off(round, 0.9, 0.729).has("volume-off"));
  round.element = {};
  CHECK_FALSE(off(round, 0.9, 0.729).has("volume-off"));
  const PlanText taper{.element = R"("thickness_top":0.15)",
                       .limits = R"("volume_tolerance":0.001)"};
  CHECK_FALSE(off(taper, 0.6, 0.56).has("volume-off"));
  CHECK(off(taper, 0.6, 0.6).has("volume-off"));
}

// The opening takes 1 m x 0.6 m from 0.6 to 1.2 m, where the wall is 0.2 m thick on the mean.
TEST_CASE("an opening of a tapered wall is left out by the thickness where it is") {
  const PlanText plan{.openings = R"([{"x":1,"z":0.6,"w":1,"h":0.6}])",
                      .element = R"("thickness_top":0.15)",
                      .limits = R"("volume_tolerance":0.001)"};
  const double whole = 4 * 1.8 * 0.2;
  const auto volume = in_cubic_metres(net_volume(Pour{plan}
                                                     .placed(1, 0, 600, 0.6)
                                                     .placed(2, 700, 1300, 1.2)
                                                     .placed(3, 1400, 2000, 1.8)
                                                     .checked()
                                                     .state,
                                                 0));
  CHECK(volume == about(whole - 0.6 * 0.2));
}

namespace {

// Two columns 0.8 m square, a lift of 1 m in each: 1.28 m3 stand, of one load.
Pour two_columns(const std::string& truck, const std::string& into_first,
                 const std::string& into_second) {
  PlanText plan{.kind = "column",
                .length = 0.8,
                .height = 1,
                .thickness = 0.8,
                .bays = "[0.8]",
                .lifts = "[1]",
                .rows = {row_text("R1", 0.5, {{"M1", 0.4}})}};
  plan.other = R"({"id":"W2","kind":"column","length":0.8,"height":1,"thickness":0.8,"bays":[0.8],)"
               R"("lifts":[1]})";
  Pour pour{plan};
  const std::string second = R"("element":"W2","lift":1)";
  pour.at(-10, R"("do":"truck","ticket":"T1","mix":"A",)" + truck + R"(,"batched":")" +
                   pour.moment(-900) + R"(","arrived":")" + pour.moment(-60) + '"')
      .at(0, R"("do":"discharge","ticket":"T1","element":"W1",)" + into_first + R"("ended":")" +
                 pour.moment(500) + '"')
      .placed(1, 0, 600, 1)
      .at(700, R"("do":"lift-start",)" + second)
      .at(710, R"("do":"discharge","ticket":"T1","element":"W2",)" + into_second + R"("ended":")" +
                   pour.moment(1200) + '"')
      .at(1300, R"("do":"lift-end","height":1,)" + second);
  return pour;
}

}  // namespace

TEST_CASE("one truck into two columns leaves the volumes at one") {
  const std::string half = R"("volume":0.64,)";
  CHECK_FALSE(two_columns(R"("volume":1.28)", {}, {}).checked().has("volume-off"));
  CHECK_FALSE(two_columns(R"("volume":1.28)", half, half).checked().has("volume-off"));
  // What went back, or stands in no form, was not brought.
  CHECK_FALSE(two_columns(R"("volume":2,"returned":0.72)", {}, {}).checked().has("volume-off"));
  CHECK_FALSE(two_columns(R"("volume":2)", half, half).checked().has("volume-off"));
  const Finding off = two_columns(R"("volume":2)", {}, {}).checked().only("volume-off");
  CHECK(off.measured->si == about((2 - 1.28) / 1.28));
}

TEST_CASE("a load in parts is as old as its last") {
  CHECK_FALSE(two_columns(R"("volume":1.28)", {}, {}).checked().has("load-old"));
  Pour late = two_columns(R"("volume":1.28)", {}, {}).later(700, 4000);
  CHECK(late.checked().only("load-old").measured->si == about(900 + 5200));
}

TEST_CASE("while the pour goes on the volumes are held to one load more") {
  const auto off = [](double volume, int loads) {
    Pour pour;
    for (int i = 0; i < loads; ++i) {
      const double from = 100 + 100 * i;
      pour.load("T" + std::to_string(i), volume, -600, from, from + 50);
    }
    return pour.placed(1, 0, 900, 0.6).at(1000, lift_start(2)).live(1100).of("volume-off");
  };
  CHECK(off(0.3, 2).empty());
  CHECK(off(0.3, 3).empty());  // 0.9 m3 against 0.6: a load may stand in the line
  REQUIRE(off(0.3, 4).size() == 1);
  CHECK(off(0.3, 4).front().measured->si == about(1));
  CHECK(off(0.25, 2).empty());  // 0.5 m3 against 0.6, a ticket to come
  REQUIRE(off(0.25, 1).size() == 1);
  CHECK(off(0.25, 1).front().measured->si == about((0.25 - 0.6) / 0.6));
}
