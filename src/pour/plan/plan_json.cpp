// Plans from and to JSON. Reading checks every number, name and place, so that nothing past this
// file meets a row off its form or a bay of no length.
#include <algorithm>
#include <cmath>
#include <set>

#include "pour/plan/json_fields.h"
#include "pour/plan/plan_figures.h"
#include "pour/plan/plan_json.h"
#include "pour/plan/plan_power_json.h"
#include "pour/plan/plan_spans.h"
#include "pour/plan/plan_writing.h"
#include "pour/plan/serves.h"

namespace rb {

namespace {

using namespace span;
constexpr Length kMillimetre = millimetres(1);

template <class Items>
void unique_ids(const Fields& at, const char* list, const Items& items) {
  std::set<std::string> seen;
  for (const auto& item : items) {
    if (!seen.insert(item.id.text).second) {
      at.refuse(list, {said("names {id} twice"), {{"id", item.id.text}}},
                said("Give each its own id"));
    }
  }
}

Person read_person(Fields f) {
  return {PersonId{f.id("id")}, f.maybe_text("name"), f.maybe_text("role")};
}

Mix read_mix(Fields f) {
  Mix mix;
  mix.id = MixId{f.id("id")};
  mix.unit_weight = kilonewtons_per_m3(tidy(f.number("unit_weight", kUnitWeight)));
  mix.slump = metres(f.number("slump", kSlump));
  mix.initial_set = hours(tidy(f.number("initial_set_h", kSetHours)));
  if (const auto temp = f.maybe_number("set_ref_temp", kTemp)) mix.set_reference = celsius(*temp);
  read_figures(f, mix);
  if (mix.temp_low && mix.temp_high && *mix.temp_low > *mix.temp_high) {
    f.refuse("temp_low", {said("is {low}, over temp_high"), {{"low", amount(*mix.temp_low)}}},
             said("Give the colder first"));
  }
  if (const std::string name = f.maybe_text("cement_class"); !name.empty()) {
    const auto cement = trade::parse_cement_class(name);
    if (!cement) {
      f.refuse("cement_class", {said("is \"{given}\""), {{"given", name}}},
               said("Use plain, retarded, blended, blended-retarded or high-blend"));
    }
    mix.cement = *cement;
  }
  return mix;
}

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
  element.batter_deg = f.maybe_number("batter_deg", kBatter).value_or(0.0);
  if (f.has("meets")) {
    for (std::string& other : f.ids("meets", most::kElements)) {
      element.meets.emplace_back(std::move(other));
    }
  }
  read_bays(f, element);
  for (const Fields& item : f.objects("openings", most::kPatches)) {
    element.openings.push_back(read_patch(item, element));
  }
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

Limits read_limits(Fields f) {
  Limits limits;
  read_figures(f, limits);
  if (limits.dose_max.value < limits.dose_min.value) {
    f.refuse("dose_max_s", said("is below dose_min_s"));
  }
  if (limits.temp_max.value < limits.temp_min.value)
    f.refuse("temp_max", said("is below temp_min"));
  return limits;
}

Plan read_plan(Fields f) {
  Plan plan;
  plan.site = f.maybe_text("site");
  plan.name = f.maybe_text("name");
  const std::string units = f.maybe_text("units");
  if (units == "us") {
    plan.units = Units::us;
  } else if (!units.empty() && units != "si") {
    f.refuse("units", {said("is \"{given}\"; si or us was expected"), {{"given", units}}});
  }
  for (const Fields& item : f.objects("people", most::kPeople))
    plan.people.push_back(read_person(item));
  for (const Fields& item : f.objects("mixes", most::kMixes)) plan.mixes.push_back(read_mix(item));
  for (const Fields& item : f.objects("elements", most::kElements))
    plan.elements.push_back(read_element(item));
  for (const Element& element : plan.elements) {
    for (const ElementId& other : element.meets) {
      if (other != element.id && plan.find(other) != nullptr) continue;
      f.refuse("elements", {said("{element} meets {other}, which is no other element of the plan"),
                            {{"element", element.id.text}, {"other", other.text}}});
    }
  }
  std::size_t motors = 0;
  for (const Element& element : plan.elements) {
    for (const Row& row : element.rows) motors += row.motors.size();
  }
  if (f.bounds() == Bounds::kept && motors > most::kAllMotors) {
    f.refuse("elements",
             {said("hang {motors} motors; a plan may have {most}"),
              {{"motors", counted(motors)}, {"most", counted(most::kAllMotors)}}},
             said("Share the work out over several pours"));
  }
  if (plan.mixes.empty()) f.refuse("mixes", said("the plan needs at least one mix"));
  if (plan.elements.empty()) f.refuse("elements", said("the plan needs at least one element"));
  plan.power = read_power(f);
  unique_ids(f, "people", plan.people);
  unique_ids(f, "mixes", plan.mixes);
  unique_ids(f, "elements", plan.elements);
  unique_ids(f, "power", plan.power);
  plan.motor_type = read_motor_type(f);
  if (f.has("limits"))
    plan.limits = read_limits({f.object("limits"), inside(f.where(), "limits"), f.bounds()});
  if (const std::string name = f.maybe_text("pressure_method"); !name.empty()) {
    const auto method = trade::parse_pressure_method(name);
    if (!method) {
      f.refuse("pressure_method", {said("is \"{given}\""), {{"given", name}}},
               said("Use aci347, ciria108 or din18218"));
    }
    plan.pressure_method = *method;
  }
  if (const Json rest = left_over(f.whole(), known_json(plan)); !rest.empty()) {
    plan.extra = rest.dump();
    f.hold_unknown(first_left(rest), bytes_left(rest));
  }
  return plan;
}

}  // namespace

Result<Plan> parse_plan(std::string_view json, const Saying& where, Bounds bounds) {
  try {
    const Json parsed = parse_json(json, where);
    return read_plan({parsed, where, bounds});
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

}  // namespace rb
