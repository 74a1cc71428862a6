// Bad plans and readings: each is refused with a message that names what, where and what was
// expected, and nothing of the script is kept.
#include <doctest/doctest.h>

#include "pour/log/script.h"

using namespace rb;

namespace {

const std::string kGood =
    R"({"at":"2026-03-02T05:00:00.000Z","by":"f1","do":"pour-open","pour":"P1","plan":{)"
    R"("units":"si","people":[{"id":"f1","name":"A","role":"foreman"}],)"
    R"("mixes":[{"id":"C1","unit_weight":23.5,"slump":0.12,"initial_set_h":5,"set_ref_temp":20,"cement_class":"plain"}],)"
    R"("elements":[{"id":"W1","kind":"wall","length":6,"height":3,"thickness":0.3,"batter_deg":0,)"
    R"("form_rating_kpa":60,"form_mass_kg_m2":55,"rise_limit":1.8,"bays":[3,3],)"
    R"("openings":[{"x":4,"z":1,"w":1,"h":1.5}],"lifts":[0.5,1.0],)"
    R"("rows":[{"id":"R1","side":"near","z":0.4,"motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.7},)"
    R"({"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.7}],"serves":[1,2]}]}],)"
    R"("power":[{"id":"I1","volts":42,"max_amps":40,"motors":["M1"],"cable":{"mm2":4,"length":25}}],)"
    R"("motor_type":{"amps":7.5,"force_kn":4,"vpm_max":6000},)"
    R"("limits":{"dose_min_s":90,"dose_max_s":120,"temp_min":10,"temp_max":35},"pressure_method":"aci347"}})"
    "\n"
    R"({"at":"2026-03-02T05:01:00Z","by":"f1","do":"hang","element":"W1","row":"R1","motors":["M1"],"cables":true})"
    "\n"
    R"({"at":"2026-03-02T05:02:00Z","by":"f1","do":"lift-start","element":"W1","lift":1})"
    "\n"
    R"({"at":"2026-03-02T05:03:00Z","by":"f1","do":"truck","ticket":"T1","mix":"C1","volume":4.5,"batched":"2026-03-02T04:30:00Z","arrived":"2026-03-02T04:55:00Z"})"
    "\n"
    R"({"at":"2026-03-02T05:04:00Z","by":"f1","do":"discharge","ticket":"T1","ended":"2026-03-02T05:20:00Z"})"
    "\n"
    R"({"at":"2026-03-02T05:05:00Z","by":"f1","do":"test","ticket":"T1","slump":0.12,"temp":18,"air":2.0,"density":2380})"
    "\n"
    R"({"at":"2026-03-02T05:06:00Z","by":"f1","do":"run","element":"W1","row":"R1","vpm":6000})"
    "\n"
    R"({"at":"2026-03-02T05:07:40Z","by":"f1","do":"rest","element":"W1","row":"R1"})"
    "\n"
    R"({"at":"2026-03-02T05:08:00Z","by":"f1","do":"insert","element":"W1","lift":1,"bay":2,"group":3,"spacing":0.3,"seconds":10,"depth_below":0.15})"
    "\n"
    R"({"at":"2026-03-02T05:12:00Z","by":"f1","do":"lift-end","element":"W1","lift":1,"height":0.5})"
    "\n"
    R"({"at":"2026-03-02T05:13:00Z","by":"f1","do":"blemish","element":"W1","kind":"honeycomb","x":1,"z":0.2,"w":0.3,"h":0.1})"
    "\n";

struct BadLine {
  const char* find;
  const char* put;
  const char* expect;
};

}  // namespace

TEST_CASE("the script the bad ones are made from is good") {
  const auto good = read_script(kGood, "s");
  REQUIRE_MESSAGE(good, to_text(good.error()));
}

TEST_CASE("a bad plan or reading is refused by name") {
  const BadLine rows[] = {
      // Signs and sizes.
      {R"("unit_weight":23.5)", R"("unit_weight":-23.5)", "mixes[1], field unit_weight"},
      {R"("unit_weight":23.5)", R"("unit_weight":2350)", "kN/m3"},
      {R"("slump":0.12,"initial)", R"("slump":120,"initial)", "field slump"},
      {R"("slump":0.12,"initial)", R"("slump":-0.1,"initial)", "field slump"},
      {R"("initial_set_h":5)", R"("initial_set_h":0)", "initial_set_h"},
      {R"("initial_set_h":5)", R"("initial_set_h":18000)", "from 0.25 h to 96 h"},
      {R"("set_ref_temp":20)", R"("set_ref_temp":293)", "degC"},
      {R"("length":6)", R"("length":0)", "elements[1], field length"},
      {R"("length":6)", R"("length":-6)", "field length"},
      {R"("length":6)", R"("length":6000)",
       "up to 500 m was expected. Check the sign and the unit"},
      {R"("height":3,"thick)", R"("height":1e9,"thick)", "field height"},
      {R"("thickness":0.3)", R"("thickness":300)", "field thickness"},
      {R"("thickness":0.3)", R"("thickness":-0.3)", "field thickness"},
      {R"("thickness":0.3)", R"("thickness":0.3,"section":"oval")", "field section"},
      {R"("thickness":0.3)", R"("thickness":0.3,"section":"round")", "a column alone"},
      {R"("thickness":0.3)", R"("thickness":0.3,"thickness_top":0)", "field thickness_top"},
      {R"("batter_deg":0)", R"("batter_deg":80)", "from -45"},
      {R"("form_rating_kpa":60)", R"("form_rating_kpa":60000)", "kPa"},
      {R"("form_rating_kpa":60)", R"("form_rating_kpa":-1)", "form_rating_kpa"},
      {R"("form_mass_kg_m2":55)", R"("form_mass_kg_m2":-55)", "form_mass_kg_m2"},
      {R"("rise_limit":1.8)", R"("rise_limit":0)", "rise_limit"},
      {R"("rise_limit":1.8)", R"("rise_limit":1800)", "m/h"},
      {R"("volts":42)", R"("volts":-42)", "power[1], field volts"},
      {R"("volts":42)", R"("volts":42000)", "V"},
      {R"("max_amps":40)", R"("max_amps":0)", "max_amps"},
      {R"("mm2":4)", R"("mm2":0)", "cable, field mm2"},
      {R"("length":25}})", R"("length":25},"trunk":{"mm2":0,"length":9}})", "trunk, field mm2"},
      {R"("length":25}})", R"("length":25},"trunk":{"mm2":4}})", "trunk, field length"},
      {R"("length":25}})", R"("length":25},"trunk":{"mm2":4,"length":9,"motors":["M2"]}})",
       "names M2, which inverter I1 does not feed"},
      {R"("length":25}})", R"("length":25},"generator":{"derate":0.8}})", "generator, field kva"},
      {R"("length":25}})", R"("length":25},"generator":{"kva":10,"derate":80}})",
       "generator, field derate"},
      {R"("length":25}})",
       R"("length":25},"generator":{"id":"G","kva":10}},{"id":"I2","volts":42,"max_amps":40,"motors":[],"generator":{"id":"G","kva":12}})",
       "gives generator G two ratings, at I1 and at I2"},
      {R"("length":25}})", R"("length":25},"internal":{"heads":0,"amps":2}})",
       "internal, field heads"},
      {R"("length":25}})", R"("length":25},"internal":{"heads":2}})", "internal, field amps"},
      {R"("amps":7.5)", R"("amps":-1)", "motor_type, field amps"},
      {R"("force_kn":4)", R"("force_kn":4000)", "force_kn"},
      {R"("vpm_max":6000)", R"("vpm_max":0)", "vpm_max"},
      {R"("dose_min_s":90)", R"("dose_min_s":-90)", "limits, field dose_min_s"},
      // Not numbers, not texts.
      {R"("length":6)", R"("length":"6 m")", "a number above 0"},
      {R"("length":6)", R"("length":null)", "is missing"},
      {R"("length":6)", R"("length":NaN)", "is not JSON"},
      {R"("length":6)", R"("length":1e999)", "line 1"},
      {R"("id":"W1","kind")", R"("id":"","kind")", "a text was expected"},
      {R"("id":"W1","kind")", R"("id":7,"kind")", "a text was expected"},
      {R"("bays":[3,3])", R"("bays":3)", "a list [...] was expected"},
      {R"("bays":[3,3])", R"("bays":[3,"3"])", "bays[2]"},
      // Words that are not known.
      {R"("kind":"wall")", R"("kind":"stair")", "wall, column or deck was expected"},
      {R"("units":"si")", R"("units":"metric")", "si or us was expected"},
      {R"("cement_class":"plain")", R"("cement_class":"fast")", "cement_class"},
      {R"("pressure_method":"aci347")", R"("pressure_method":"guess")", "pressure_method"},
      {R"("side":"near")", R"("side":"left")", "near or far was expected"},
      // Things that do not fit each other.
      {R"("bays":[3,3])", R"("bays":[3,4])", "add up to 7 m"},
      {R"("lifts":[0.5,1.0])", R"("lifts":[0.5,0.5])", "tops must rise"},
      {R"("lifts":[0.5,1.0])", R"("lifts":[0.5,3.5])", "above the form"},
      {R"("openings":[{"x":4)", R"("openings":[{"x":5.5)", "reaches beyond the face"},
      {R"("z":1,"w":1)", R"("z":2.5,"w":1)", "reaches beyond the face"},
      {R"("z":0.4,"motors")", R"("z":3.4,"motors")", "off the face"},
      {R"("x":4.5,"reach_x")", R"("x":6.5,"reach_x")", "off the face"},
      {R"("x":4.5,"reach_x")", R"("x":1.51,"reach_x")", "on the same place"},
      {R"("id":"M2")", R"("id":"M1")", "twice"},
      {R"("reach_z":0.7},)", R"("reach_z":0},)", "reach_z"},
      {R"("motors":[{"id":"M1","x":1.5,"reach_x":1.6,"reach_z":0.7},{"id":"M2","x":4.5,"reach_x":1.6,"reach_z":0.7}])",
       R"("motors":[])", "at least one motor"},
      {R"("serves":[1,2])", R"("serves":[1.5])", "whole lift numbers"},
      {R"("dose_max_s":120)", R"("dose_max_s":60)", "below dose_min_s"},
      {R"("temp_max":35)", R"("temp_max":5)", "below temp_min"},
      // Readings.
      {R"("height":0.5})", R"("height":-0.5})", "line 10, field height"},
      {R"("height":0.5})", R"("height":500})", "line 10, field height"},
      {R"("height":0.5})", R"("height":3.5})", "above the form"},
      {R"("lift-end","element":"W1","lift":1)", R"("lift-end","element":"W1","lift":2)",
       "has not been started"},
      {R"("lift-end","element":"W1","lift":1)", R"("lift-end","element":"W1","lift":0)",
       "a whole number from 1"},
      {R"("lift-start","element":"W1")", R"("lift-start","element":"W2")", "W2 is not in the plan"},
      {R"("bay":2)", R"("bay":3)", "bay 3 is not in the plan"},
      {R"("bay":2)", R"("bay":0)", "a whole number from 1"},
      {R"("group":3)", R"("group":6)", "a whole number from 1 to 5"},
      {R"("spacing":0.3)", R"("spacing":300)", "field spacing"},
      {R"("seconds":10)", R"("seconds":-10)", "field seconds"},
      {R"("row":"R1","vpm":6000)", R"("row":"R9","vpm":6000)", "R9"},
      {R"("vpm":6000)", R"("vpm":-6000)", "vpm"},
      {R"("volume":4.5)", R"("volume":0)", "field volume"},
      {R"("volume":4.5)", R"("volume":4500)", "m3"},
      {R"("mix":"C1")", R"("mix":"C9")", "mix C9 is not in the plan"},
      {R"("temp":18)", R"("temp":180)", "degC"},
      {R"("slump":0.12,"temp")", R"("slump":12,"temp")", "field slump"},
      {R"("air":2.0)", R"("air":-2)", "%"},
      {R"("density":2380)", R"("density":2.38)", "kg/m3"},
      {R"("x":1,"z":0.2)", R"("x":11,"z":0.2)", "off the face"},
      // Time running backwards, and times that are none.
      {R"("arrived":"2026-03-02T04:55:00Z")", R"("arrived":"2026-03-02T04:05:00Z")",
       "is before batched"},
      {R"("ended":"2026-03-02T05:20:00Z")", R"("ended":"2026-03-02T05:00:00Z")",
       "ends before it begins"},
      {R"("at":"2026-03-02T05:12:00Z")", R"("at":"2026-03-02T05:01:30Z")", "has not been started"},
      {R"("at":"2026-03-02T05:12:00Z")", R"("at":"2026-02-30T05:12:00Z")", "line 10, field at"},
      {R"("at":"2026-03-02T05:12:00Z")", R"("at":"05:12")", "line 10, field at"},
      {R"("at":"2026-03-02T05:12:00Z")", R"("at":1772428320)", "line 10, field at"},
  };
  CHECK(std::size(rows) >= 60);
  for (const BadLine& row : rows) {
    CAPTURE(row.find);
    CAPTURE(row.put);
    std::string text = kGood;
    const auto at = text.find(row.find);
    REQUIRE(at != std::string::npos);
    text.replace(at, std::string_view{row.find}.size(), row.put);
    const auto read = read_script(text, "day.jsonl");
    REQUIRE_FALSE(read);
    const std::string said = to_text(read.error());
    CAPTURE(said);
    CHECK(said.find("day.jsonl line ") == 0);
    CHECK(said.find(row.expect) != std::string::npos);
  }
}
