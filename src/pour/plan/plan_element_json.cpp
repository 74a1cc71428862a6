// Elements of a plan from JSON: their faces, lifts, rows and what is asked of them once poured.
#include "pour/plan/plan_element_json.h"

#include <algorithm>
#include <cmath>

#include "pour/plan/plan_figures.h"
#include "pour/plan/plan_spans.h"
#include "pour/plan/serves.h"

namespace rb {

namespace {

using namespace span;
constexpr Length kMillimetre = millimetres(1);

Patch read_patch(Fields f, const Element& element) {
  Patch patch{metres(f.number("x", kPosition)), metres(f.number("z", kPosition)),
              metres(f.number("w", kAlong)), metres(f.number("h", kHeight))};
  if (patch.x + patch.w > element.length + kMillimetre ||
      patch.z + patch.h > element.rise_height() + kMillimetre) {
    f.refuse("", {said("reaches beyond the face of {element} ({length~} x {height~})"),
                  {{"element", element.id.text},
                   {"length", amount(element.length)},
                   {"height", amount(element.rise_height())}}});
  }
  return patch;
}

void read_beams(Fields& f, Element& element) {
  for (Fields item : f.objects("beams", most::kPatches)) {
    Beam beam{{}, metres(item.number("w", kThickness)), metres(item.number("d", kThickness))};
    if (const auto x = item.maybe_number("x", kPosition)) beam.x = metres(*x);
    if (element.kind != ElementKind::deck) {
      item.refuse("", said("is given for an element that is no deck"));
    }
    const Length end = beam.x ? *beam.x + beam.width : beam.width;
    const Length most = beam.x ? element.length : element.height;
    if (end > most + kMillimetre) {
      item.refuse("w", {said("reaches beyond the deck {element} ({most~})"),
                        {{"element", element.id.text}, {"most", amount(most)}}});
    }
    element.beams.push_back(beam);
  }
}

Motor read_motor(Fields f, const Element& element) {
  Motor motor{MotorId{f.id("id")}, metres(f.number("x", kPosition)),
              metres(f.number("reach_x", kReach)), metres(f.number("reach_z", kReach))};
  if (motor.x > element.length) {
    f.refuse("x", {said("is {given~}, off the face of {element} ({length~} long)"),
                   {{"given", amount(motor.x)},
                    {"element", element.id.text},
                    {"length", amount(element.length)}}});
  }
  return motor;
}

Row read_row(Fields f, const Element& element) {
  Row row;
  row.id = RowId{f.id("id")};
  row.side = f.side();
  row.z = metres(f.number("z", kPosition));
  if (row.z > element.rise_height()) {
    f.refuse("z", {said("is {given~}, off the face of {element} ({height~} high)"),
                   {{"given", amount(row.z)},
                    {"element", element.id.text},
                    {"height", amount(element.rise_height())}}});
  }
  for (const Fields& item : f.objects("motors", most::kMotors))
    row.motors.push_back(read_motor(item, element));
  if (row.motors.empty()) f.refuse("motors", said("a row needs at least one motor"));
  unique_ids(f, "motors", row.motors);
  for (std::size_t a = 0; a < row.motors.size(); ++a) {
    for (std::size_t b = a + 1; b < row.motors.size(); ++b) {
      const Length gap = row.motors[a].x - row.motors[b].x;
      if (std::abs(in_metres(gap)) < 0.05) {
        f.refuse("motors",
                 {said("{one} and {other} hang on the same place (x = {x~})"),
                  {{"one", row.motors[a].id.text},
                   {"other", row.motors[b].id.text},
                   {"x", amount(row.motors[a].x)}}},
                 said("Motors on a row stand at least {50 mm} apart"));
      }
    }
  }
  if (f.has("serves")) {
    for (const double lift : f.numbers("serves", {1, 999, ""}, most::kLifts)) {
      if (lift != std::floor(lift)) f.refuse("serves", said("whole lift numbers were expected"));
      row.serves.push_back(static_cast<int>(lift));
    }
  } else {
    row.serves = lifts_in_reach(row, element);
  }
  return row;
}

void read_bays(Fields& f, Element& element) {
  Length sum;
  for (const double bay : f.numbers("bays", kAlong, most::kBays)) {
    element.bays.push_back(metres(bay));
    sum += element.bays.back();
  }
  if (element.bays.empty()) {
    element.bays.push_back(element.length);
    return;
  }
  if (std::abs(in_metres(sum - element.length)) > 0.001) {
    f.refuse(
        "bays",
        {said("add up to {sum~} but {element} is {length~} long"),
         {{"sum", amount(sum)}, {"element", element.id.text}, {"length", amount(element.length)}}});
  }
}

void read_lifts(Fields& f, Element& element) {
  for (const double top : f.numbers("lifts", kHeight, most::kLifts)) {
    const Length below = element.lifts.empty() ? Length{} : element.lifts.back();
    if (metres(top) <= below) f.refuse("lifts", said("tops must rise from one lift to the next"));
    element.lifts.push_back(metres(top));
  }
  if (!element.lifts.empty() && element.lifts.back() > element.rise_height() + kMillimetre) {
    f.refuse("lifts",
             {said("the last top, {top~}, is above the form ({form~})"),
              {{"top", amount(element.lifts.back())}, {"form", amount(element.rise_height())}}});
  }
}

void hold_section_together(Fields& f, const Element& element) {
  if (element.kind == ElementKind::deck && element.thickness_top) {
    f.refuse("thickness_top", said("is given for a deck, which has one thickness"));
  }
  if (element.section == trade::Section::rect) return;
  if (element.kind != ElementKind::column) {
    f.refuse("section", said("is round, which a column alone can be"));
  }
  if (std::abs(in_metres(element.thickness - element.length)) > 1e-9) {
    f.refuse("thickness",
             {said("is {thickness~}, but a round section is as thick as it is long ({length~})"),
              {{"thickness", amount(element.thickness)}, {"length", amount(element.length)}}});
  }
  if (!f.objects("openings", most::kPatches).empty())
    f.refuse("openings", said("a round section has none"));
  if (f.has("bays") && f.numbers("bays", kAlong, most::kBays).size() > 1) {
    f.refuse("bays", said("a round section is one bay"));
  }
}

// What the mix reaches: pairs of equivalent age and strength that go up.
void read_strength_curve(Fields& f, Element& element) {
  constexpr std::size_t kPoints = 50;
  constexpr Span kHours{0, 10000, "h"};
  constexpr const char* kField = "strength_curve";
  if (!f.has(kField)) return;
  const Json& list = f.whole().at(kField);
  const Said remedy = said("Give [[equivalent age in h, MPa], ...], such as [[12, 4], [24, 9]]");
  if (!list.is_array()) f.refuse(kField, said("a list of pairs was expected"), remedy);
  if (list.size() > kPoints) {
    f.refuse(kField, {said("has {count} points; at most {most} are taken"),
                      {{"count", counted(list.size())}, {"most", counted(kPoints)}}});
  }
  for (const Json& pair : list) {
    if (!pair.is_array() || pair.size() != 2 || !pair[0].is_number() || !pair[1].is_number()) {
      f.refuse(kField, {said("holds {given}"), {{"given", quoted(pair)}}}, remedy);
    }
    const double hours_given = pair[0].get<double>();
    const double strength = pair[1].get<double>();
    if (!(hours_given >= kHours.least && hours_given <= kHours.most) ||
        !(strength >= kStrength.least && strength <= kStrength.most)) {
      f.refuse(kField, {said("holds {given}: 0 to 10000 h and 0 to 300 MPa are taken"),
                        {{"given", quoted(pair)}}});
    }
    const trade::StrengthPoint point{hours(tidy(hours_given)), megapascals(tidy(strength))};
    if (!element.strength_curve.empty() &&
        (point.age <= element.strength_curve.back().age ||
         point.strength < element.strength_curve.back().strength)) {
      f.refuse(kField, {said("does not go up at {given}"), {{"given", quoted(pair)}}},
               said("Give the points by age, the youngest first"));
    }
    element.strength_curve.push_back(point);
  }
}

}  // namespace

Element read_element(Fields f) {
  Element element;
  element.id = ElementId{f.id("id")};
  const std::string kind = f.maybe_text("kind");
  if (kind == "column") {
    element.kind = ElementKind::column;
  } else if (kind == "deck") {
    element.kind = ElementKind::deck;
  } else if (!kind.empty() && kind != "wall") {
    f.refuse("kind",
             {said("is \"{given}\"; wall, column or deck was expected"), {{"given", kind}}});
  }
  element.length = metres(f.number("length", kAlong));
  element.height = metres(f.number("height", kHeight));
  element.thickness = metres(f.number("thickness", kThickness));
  if (f.has("section")) {
    element.section = static_cast<trade::Section>(f.one_of("section", words_of(trade::Section{})));
  }
  read_figures(f, element);
  hold_section_together(f, element);
  if (f.has("strip_permit")) element.strip_permit = f.boolean("strip_permit");
  element.batter_deg = f.maybe_number("batter_deg", kBatter).value_or(0.0);
  if (f.has("meets")) {
    for (std::string& other : f.ids("meets", most::kElements)) {
      element.meets.emplace_back(std::move(other));
    }
  }
  read_strength_curve(f, element);
  read_bays(f, element);
  for (const Fields& item : f.objects("openings", most::kPatches)) {
    element.openings.push_back(read_patch(item, element));
  }
  read_beams(f, element);
  for (const Fields& item : f.objects("congested", most::kPatches)) {
    CongestedZone zone{read_patch(item, element), std::nullopt};
    if (const auto own = Fields{item}.maybe_number("dose_min_s", kSeconds)) {
      zone.dose_min = seconds(*own);
    }
    element.congested.push_back(zone);
  }
  read_lifts(f, element);
  for (const Fields& item : f.objects("rows", most::kRows))
    element.rows.push_back(read_row(item, element));
  for (std::size_t a = 0; a < element.rows.size(); ++a) {
    for (std::size_t b = a + 1; b < element.rows.size(); ++b) {
      if (element.rows[a].id == element.rows[b].id &&
          element.rows[a].side == element.rows[b].side) {
        f.refuse("rows", {said("names {id} twice on one side"), {{"id", element.rows[a].id.text}}},
                 said("Give each row of a side its own id"));
      }
    }
  }
  return element;
}

}  // namespace rb
