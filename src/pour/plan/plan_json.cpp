// Plans from and to JSON. Reading checks every number, name and place, so that nothing past this
// file meets a row off its form or a bay of no length.
#include "pour/plan/plan_json.h"

#include "pour/plan/json_fields.h"
#include "pour/plan/plan_element_json.h"
#include "pour/plan/plan_figures.h"
#include "pour/plan/plan_power_json.h"
#include "pour/plan/plan_spans.h"
#include "pour/plan/plan_writing.h"

namespace rb {

namespace {

using namespace span;

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
