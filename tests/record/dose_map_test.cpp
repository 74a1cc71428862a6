#include "record/model/dose_map.h"

#include <doctest/doctest.h>

#include "sample.h"

using namespace rb;
using doctest::Approx;

namespace {

DoseMap face(std::vector<DoseMapPatch> patches) {
  DoseMap map;
  map.element = "W1";
  map.length = metres(6);
  map.height = metres(3);
  map.bay_edges = {metres(0), metres(3), metres(6)};
  map.patches = std::move(patches);
  return map;
}

double area(const std::vector<DoseBand>& bands) {
  double sum = 0;
  for (const DoseBand& b : bands) sum += b.w * b.h;
  return sum;
}

}  // namespace

TEST_CASE("a dose belongs to a class: just below, at and just above each edge") {
  const DoseMap map = face({});
  struct Case {
    double dose;
    std::size_t belongs;
  };
  const Case cases[] = {{0, 0},  {0.1, 1}, {44.9, 1},  {45, 2},  {89.9, 2},
                        {90, 3}, {120, 3}, {120.1, 4}, {480, 4}, {480.1, 5}};
  for (const Case& c : cases) {
    CAPTURE(c.dose);
    CHECK(dose_class(map, seconds(c.dose)) == c.belongs);
  }
}

TEST_CASE("a patch is cut where its dose passes from class to class") {
  // 3 m high, 0 s at the bottom and 150 s at the top: 50 s a metre.
  const auto bands =
      dose_bands(face({{metres(0), metres(0), metres(2), metres(3), seconds(0), seconds(150)}}));
  CHECK(bands[0].empty());
  CHECK(area(bands[1]) == Approx(2 * 0.9));  // up to 45 s
  CHECK(area(bands[2]) == Approx(2 * 0.9));  // to 90 s
  CHECK(area(bands[3]) == Approx(2 * 0.6));  // to 120 s
  CHECK(area(bands[4]) == Approx(2 * 0.6));  // the rest
  CHECK(bands[5].empty());
  REQUIRE(bands[3].size() == 1);
  CHECK(bands[3][0].z == Approx(1.8));
}

TEST_CASE("neighbours of one class are drawn as one rectangle") {
  std::vector<DoseMapPatch> patches;
  for (int x = 0; x < 40; ++x) {
    for (int z = 0; z < 10; ++z) {
      patches.push_back({metres(0.05 * x), metres(0.1 * z), metres(0.05), metres(0.1), seconds(100),
                         seconds(100)});
    }
  }
  const auto bands = dose_bands(face(patches));
  REQUIRE(bands[3].size() == 1);
  CHECK(bands[3][0].w == Approx(2.0));
  CHECK(bands[3][0].h == Approx(1.0));
}

TEST_CASE("the legend names the classes by the plan's own limits") {
  DoseMap map = face({});
  map.dose_min = seconds(60);
  map.dose_max = seconds(100);
  const auto words = dose_legend(map);
  CHECK(words[0] == "none");
  CHECK(words[1] == "under 30 s");
  CHECK(words[2] == "30 to 60 s");
  CHECK(words[3] == "60 to 100 s");
  CHECK(words[5] == "over 400 s");
}

TEST_CASE("the outline comes from the plan and the lifts from the state") {
  const test::Sample sample = test::sample_pour();
  const DoseMap map = make_dose_map(sample.state, {0, Side::near_side, {}});
  CHECK(map.bay_edges.size() == 5);
  CHECK(in_metres(map.bay_edges.back()) == Approx(12));
  CHECK(map.lifts.size() == 3);
  CHECK(in_metres(map.lifts[1].tops[0]) == Approx(2.8));
  CHECK(map.rows.size() == 4);
  CHECK(map.rows[0].motors.size() == 6);
  CHECK(map.openings.size() == 1);
  REQUIRE(map.blemishes.size() == 1);
  CHECK(map.blemishes[0].number == 1);
  CHECK(in_metres(map.blemishes[0].patch.x) == Approx(6.2));
  CHECK(make_dose_map(sample.state, {0, Side::far_side, {}}).rows.empty());
  CHECK(make_dose_map(sample.state, {0, Side::far_side, {}}).blemishes.empty());
}

TEST_CASE("a field of the engineering becomes patches, piece by piece") {
  trade::DoseField field;
  field.strips.push_back({metres(0), metres(0.5), 0,
                          trade::DosePieces{{{metres(0), metres(1), seconds(10), seconds(20)},
                                             {metres(1.5), metres(2), seconds(30), seconds(30)}}}});
  const SideDose dose = side_dose(0, Side::far_side, field);
  REQUIRE(dose.patches.size() == 2);
  CHECK(in_metres(dose.patches[1].z) == Approx(1.5));
  CHECK(in_metres(dose.patches[1].h) == Approx(0.5));
  CHECK(dose.patches[0].dose_high == seconds(20));
}

TEST_CASE("the picture is the same twice, and is a PNG as wide as asked") {
  const DoseMap map =
      face({{metres(0), metres(0), metres(6), metres(3), seconds(0), seconds(600)}});
  const std::string once = dose_map_png(map, {}, 800);
  CHECK(once == dose_map_png(map, {}, 800));
  REQUIRE(once.size() > 24);
  CHECK(once.substr(0, 8) == "\x89PNG\r\n\x1a\n");
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(once[i]); };
  CHECK(byte(18) * 256 + byte(19) == 800);  // IHDR width
  CHECK(once != dose_map_png(face({}), {}, 800));
}

TEST_CASE("faces of odd shapes can be drawn") {
  for (const auto& [length, height] :
       {std::pair{60.0, 2.4}, {0.4, 6.0}, {12.0, 0.2}, {0.05, 0.05}}) {
    const auto& tried = length;
    CAPTURE(tried);
    DoseMap map = face({});
    map.length = metres(length);
    map.height = metres(height);
    map.bay_edges = {metres(0), metres(length)};
    for (int lift = 1; lift < 30; ++lift) map.lifts.push_back({lift, {metres(height * lift / 30)}});
    CHECK(dose_map_png(map, Voice{.units = Units::us}, 400).size() > 100);
  }
}
