// What a face is looked at for besides its dose: loads, ages at cover and heads, held to what the
// rules find of the same pours and to figures worked out by hand.
#include <doctest/doctest.h>

#include "pour/outlook/face_bands.h"
#include "pour/outlook/loads.h"
#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

double z(Length height) {
  return in_metres(height);
}

}  // namespace

TEST_CASE("concrete is told by the load it came from, height by height, with its age") {
  // Two loads of half an hour each fill 1.2 m; nobody told of a third.
  Pour pour;
  pour.load("T1", 2, -1800, 0, 1800).load("T2", 2, -600, 1800, 3600);
  pour.placed(1, 0, 1800, 0.6).placed(2, 1800, 3600, 1.2);
  const Checked seen = pour.checked();
  const auto bands = load_bands(seen.state, 0);
  REQUIRE(bands.size() == 4);  // two a bay
  CHECK(bands[0].trucks == std::vector<std::size_t>{0});
  CHECK(z(bands[0].from) == about(0));
  CHECK(z(bands[0].to) == doctest::Approx(0.6).epsilon(0.01));
  CHECK(in_seconds(*bands[0].age) == doctest::Approx(3600).epsilon(0.01));
  CHECK(bands[1].trucks == std::vector<std::size_t>{1});
  CHECK(z(bands[1].from) == about(z(bands[0].to)));
  CHECK(z(bands[1].to) == about(1.2));
  CHECK(in_seconds(*bands[1].age) == doctest::Approx(4200).epsilon(0.01));
  for (const LoadBand& band : bands) {
    const auto middle = seen.state.elements[0].tops[band.bay].reached((band.from + band.to) / 2.0);
    CHECK(band.trucks == loads_at(seen.state, 0, *middle));
    CHECK(band.came <= band.until);
  }
}

TEST_CASE("where no load was told it is not known, and there is no age") {
  const Checked seen = Pour{}.placed(1, 0, 1800, 0.6).checked();
  const auto bands = load_bands(seen.state, 0);
  REQUIRE(bands.size() == 2);
  CHECK(bands[0].trucks.empty());
  CHECK_FALSE(bands[0].age);
}

TEST_CASE("a lift is as old as its top was when it was covered; the last is never covered") {
  Pour pour;
  pour.placed(1, 0, 1200, 0.6).placed(2, 4800, 6000, 1.2).placed(3, 7200, 8400, 1.8);
  const Checked seen = pour.checked();
  const auto bands = cover_bands(seen.state, 0);
  REQUIRE(bands.size() == 6);
  CHECK(bands[0].lift == 1);
  CHECK(in_seconds(bands[0].came) == about(1200));
  REQUIRE(bands[0].covered);
  CHECK(in_seconds(*bands[0].covered) == about(4800));
  CHECK(in_seconds(bands[0].age(seen.state.last)) == about(3600));
  // As it was when it still lay open.
  CHECK(in_seconds(bands[0].age(seconds(2200))) == about(1000));
  CHECK(bands[0].share(seconds(2200)) < bands[0].share(seen.state.last));
  CHECK_FALSE(bands[0].last);
  CHECK(bands.back().last);
  CHECK_FALSE(bands.back().covered);
}

TEST_CASE(
    "a lift covered when it had set is over its time where the rule finds it knitted too late") {
  PlanText plan;
  plan.limits = kFresh;
  plan.mix = R"("unit_weight":24,"slump":0.12,"initial_set_h":2)" + kQ;
  const Checked seen = Pour{plan}.placed(1, 0, 1200, 0.6).placed(2, 14400, 15600, 1.2).checked();
  CHECK(seen.has("knit-late"));
  const auto bands = cover_bands(seen.state, 0);
  CHECK(bands[0].share(seen.state.last) > 1);
  const Checked soon = Pour{plan}.placed(1, 0, 1200, 0.6).placed(2, 1300, 2500, 1.2).checked();
  CHECK(cover_bands(soon.state, 0)[0].share(soon.state.last) < 1);
}

TEST_CASE("the greatest head on a face is the head the run is judged by") {
  PlanText plan{.height = 4, .rows = {full_row("R1", 0.9)}};
  plan.element = R"("form_rating_kpa":30,"reach_pressure_z":0.6)";
  const Checked seen = Pour{plan}.placed(1, 0, 1800, 1.8).ran("R1", 1000, 1600).checked();
  const auto spans = head_spans(seen.state, 0, Side::near_side);
  const auto bands = heads_until(seen.state.elements[0], spans, seen.state.last);
  REQUIRE(bands.size() == 2);  // one a bay
  CHECK(in_kilopascals(bands[0].low) == about(in_kilopascals(seen.report.runs.at(0).head)));
  CHECK(in_kilopascals(bands[0].low) == about(1.3 * 24));
  CHECK(z(bands[0].from) == about(0.3));
  CHECK(z(bands[0].to) == about(1.6));
  CHECK(in_kilopascals(bands[0].high) == about(0));
  // Half way through the run the concrete stood at 1.3 m; before it nothing pressed.
  const auto half = heads_until(seen.state.elements[0], spans, seconds(1300));
  REQUIRE(half.size() == 2);
  CHECK(in_kilopascals(half[0].low) == about(24));
  CHECK(heads_until(seen.state.elements[0], spans, seconds(1000)).empty());
  CHECK(head_spans(seen.state, 0, Side::far_side).empty());
}

TEST_CASE("of several runs each height has the greatest head that pressed there") {
  PlanText plan{.height = 4, .rows = {full_row("R1", 0.9), full_row("R2", 2.1)}};
  plan.element = R"("form_rating_kpa":30,"reach_pressure_z":0.6)";
  Pour pour{plan};
  pour.placed(1, 0, 1800, 1.8).ran("R1", 1600, 1700).placed(2, 1800, 3600, 3.6);
  pour.ran("R2", 3400, 3600);
  const Checked seen = pour.checked();
  const auto bands = heads_until(seen.state.elements[0], head_spans(seen.state, 0, Side::near_side),
                                 seen.state.last);
  REQUIRE(bands.size() == 4);
  CHECK(z(bands[0].from) == about(0.3));  // R1's, up to where R2's begins
  CHECK(in_kilopascals(bands[0].low) == about(1.4 * 24));
  for (const HeadBand& band : bands) CHECK(band.low >= band.high);
  bool upper = false;
  for (const HeadBand& band : bands) {
    upper = upper || (z(band.from) == about(1.5) && in_kilopascals(band.low) == about(2.1 * 24));
  }
  CHECK(upper);
}
