// Plans from and to JSON. Reading checks every number, name and place, so that nothing past this
// file meets a row off its form or a bay of no length.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "pour/plan/json_fields.h"
#include "pour/plan/plan_json.h"
#include "pour/plan/serves.h"

namespace rb {

namespace {

constexpr Span kAlong{0, 500, "m", true};
constexpr Span kPosition{0, 500, "m"};
constexpr Span kHeight{0, 200, "m", true};
constexpr Span kThickness{0, 50, "m", true};
constexpr Span kReach{0, 10, "m", true};
constexpr Span kUnitWeight{5, 60, "kN/m3"};
constexpr Span kSlump{0, 0.9, "m"};
constexpr Span kSetHours{0.25, 96, "h"};
constexpr Span kTemp{-30, 70, "degC"};
constexpr Span kPressure{1, 2000, "kPa"};
constexpr Span kMassPerArea{0, 5000, "kg/m2"};
constexpr Span kRise{0, 100, "m/h", true};
constexpr Span kBatter{-45, 45, "degrees"};
constexpr Span kSeconds{0, 86400, "s"};
constexpr Span kShare{0, 1, "(a share from 0 to 1)"};
constexpr Span kVolts{0, 1000, "V", true};
constexpr Span kAmps{0, 5000, "A", true};
constexpr Span kForce{0, 500, "kN", true};
constexpr Span kSpeed{0, 60000, "vpm", true};
constexpr Length kMillimetre = millimetres(1);

template <class Items>
void unique_ids(const Fields& at, const char* list, const Items& items) {
  std::set<std::string> seen;
  for (const auto& item : items) {
    if (!seen.insert(item.id.text).second) {
      at.refuse(list, fmt::format("names {} twice", item.id.text), "Give each its own id");
    }
  }
}

Person read_person(Fields f) {
  return {PersonId{f.id("id")}, f.maybe_text("name"), f.maybe_text("role")};
}

Mix read_mix(Fields f) {
  Mix mix;
  mix.id = MixId{f.id("id")};
  mix.unit_weight = kilonewtons_per_m3(f.number("unit_weight", kUnitWeight));
  mix.slump = metres(f.number("slump", kSlump));
  mix.initial_set = hours(f.number("initial_set_h", kSetHours));
  if (const auto temp = f.maybe_number("set_ref_temp", kTemp)) mix.set_reference = celsius(*temp);
  if (const std::string name = f.maybe_text("cement_class"); !name.empty()) {
    const auto cement = trade::parse_cement_class(name);
    if (!cement) {
      f.refuse("cement_class", fmt::format("is \"{}\"", name),
               "Use plain, retarded, blended, blended-retarded or high-blend");
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
    f.refuse("", fmt::format("reaches beyond the face of {} ({:g} x {:g} m)", element.id.text,
                             in_metres(element.length), in_metres(element.rise_height())));
  }
  return patch;
}

Motor read_motor(Fields f, const Element& element) {
  Motor motor{MotorId{f.id("id")}, metres(f.number("x", kPosition)),
              metres(f.number("reach_x", kReach)), metres(f.number("reach_z", kReach))};
  if (motor.x > element.length) {
    f.refuse("x", fmt::format("is {:g} m, off the face of {} ({:g} m long)", in_metres(motor.x),
                              element.id.text, in_metres(element.length)));
  }
  return motor;
}

Side read_side(Fields& f) {
  const std::string side = f.maybe_text("side");
  if (side.empty() || side == "near") return Side::near_side;
  if (side != "far") f.refuse("side", fmt::format("is \"{}\"; near or far was expected", side));
  return Side::far_side;
}

Row read_row(Fields f, const Element& element) {
  Row row;
  row.id = RowId{f.id("id")};
  row.side = read_side(f);
  row.z = metres(f.number("z", kPosition));
  if (row.z > element.rise_height()) {
    f.refuse("z", fmt::format("is {:g} m, off the face of {} ({:g} m high)", in_metres(row.z),
                              element.id.text, in_metres(element.rise_height())));
  }
  for (const Fields& item : f.objects("motors", most::kMotors))
    row.motors.push_back(read_motor(item, element));
  if (row.motors.empty()) f.refuse("motors", "a row needs at least one motor");
  unique_ids(f, "motors", row.motors);
  for (std::size_t a = 0; a < row.motors.size(); ++a) {
    for (std::size_t b = a + 1; b < row.motors.size(); ++b) {
      const Length gap = row.motors[a].x - row.motors[b].x;
      if (std::abs(in_metres(gap)) < 0.05) {
        f.refuse("motors",
                 fmt::format("{} and {} hang on the same place (x = {:g} m)", row.motors[a].id.text,
                             row.motors[b].id.text, in_metres(row.motors[a].x)),
                 "Motors on a row stand at least 50 mm apart");
      }
    }
  }
  if (f.has("serves")) {
    for (const double lift : f.numbers("serves", {1, 999, ""}, most::kLifts)) {
      if (lift != std::floor(lift)) f.refuse("serves", "whole lift numbers were expected");
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
    f.refuse("bays", fmt::format("add up to {:g} m but {} is {:g} m long", in_metres(sum),
                                 element.id.text, in_metres(element.length)));
  }
}

void read_lifts(Fields& f, Element& element) {
  for (const double top : f.numbers("lifts", kHeight, most::kLifts)) {
    const Length below = element.lifts.empty() ? Length{} : element.lifts.back();
    if (metres(top) <= below) f.refuse("lifts", "tops must rise from one lift to the next");
    element.lifts.push_back(metres(top));
  }
  if (!element.lifts.empty() && element.lifts.back() > element.rise_height() + kMillimetre) {
    f.refuse("lifts",
             fmt::format("the last top, {:g} m, is above the form ({:g} m)",
                         in_metres(element.lifts.back()), in_metres(element.rise_height())));
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
    f.refuse("kind", fmt::format("is \"{}\"; wall, column or deck was expected", kind));
  }
  element.length = metres(f.number("length", kAlong));
  element.height = metres(f.number("height", kHeight));
  element.thickness = metres(f.number("thickness", kThickness));
  element.batter_deg = f.maybe_number("batter_deg", kBatter).value_or(0.0);
  if (const auto v = f.maybe_number("form_rating_kpa", kPressure)) {
    element.form_rating = kilopascals(*v);
  }
  if (const auto v = f.maybe_number("form_mass_kg_m2", kMassPerArea)) {
    element.form_mass = kilograms_per_m2(*v);
  }
  if (const auto v = f.maybe_number("rise_limit", kRise)) element.rise_limit = metres_per_hour(*v);
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
        f.refuse("rows", fmt::format("names {} twice on one side", element.rows[a].id.text),
                 "Give each row of a side its own id");
      }
    }
  }
  return element;
}

Inverter read_inverter(Fields f) {
  Inverter inverter;
  inverter.id = InverterId{f.id("id")};
  inverter.volts = volts(f.number("volts", kVolts));
  inverter.max_amps = amperes(f.number("max_amps", kAmps));
  for (const std::string& motor : f.ids("motors", most::kMotors))
    inverter.motors.emplace_back(motor);
  if (f.has("cable")) {
    Fields cable{f.object("cable"), f.where() + ", cable", f.bounds()};
    inverter.cable = Cable{square_metres(cable.number("mm2", {0, 1000, "mm2", true}) * 1e-6),
                           metres(cable.number("length", {0, 2000, "m", true}))};
  }
  return inverter;
}

template <class T, class Make>
void read_limit(Fields& f, const char* field, const Span& span, Limit<T>& limit, Make make) {
  if (const auto value = f.maybe_number(field, span)) limit = {make(*value), LimitFrom::plan};
}

Limits read_limits(Fields f) {
  Limits limits;
  const auto share = [](double v) { return v; };
  read_limit(f, "dose_min_s", kSeconds, limits.dose_min, seconds);
  read_limit(f, "dose_max_s", kSeconds, limits.dose_max, seconds);
  read_limit(f, "under_share_max", kShare, limits.under_share_max, share);
  read_limit(f, "rise_window_s", {1, 86400, "s"}, limits.rise_window, seconds);
  read_limit(f, "load_age_max_s", kSeconds, limits.load_age_max, seconds);
  read_limit(f, "temp_min", kTemp, limits.temp_min, celsius);
  read_limit(f, "temp_max", kTemp, limits.temp_max, celsius);
  read_limit(f, "volume_tolerance", kShare, limits.volume_tolerance, share);
  read_limit(f, "insert_spacing_factor", {0, 10, "", true}, limits.insert_spacing_factor, share);
  read_limit(f, "knit_depth", {0, 5, "m"}, limits.knit_depth, metres);
  if (limits.dose_max.value < limits.dose_min.value) {
    f.refuse("dose_max_s", "is below dose_min_s");
  }
  if (limits.temp_max.value < limits.temp_min.value) f.refuse("temp_max", "is below temp_min");
  return limits;
}

Json known_json(const Plan& plan);

// Unknown fields, wherever in the plan, are kept: what is in the text and not in what is written of
// the plan. Parts of objects are put under kInside, of lists under kItems by the items' ids, so
// that they find their place again, or are left out when it is gone.
constexpr const char* kInside = "@inside";
constexpr const char* kItems = "@items";

const Json* item_of(const Json& list, const std::string& id) {
  for (const Json& item : list) {
    if (item.is_object() && item.value("id", Json{}) == id) return &item;
  }
  return nullptr;
}

Json left_over(const Json& read, const Json& written) {
  Json rest = Json::object();
  for (const auto& [key, value] : read.items()) {
    const auto known = written.find(key);
    if (known == written.end()) {
      if (!value.is_null()) rest[key] = value;
      continue;
    }
    if (value.is_object() && known->is_object()) {
      if (Json inside = left_over(value, *known); !inside.empty()) {
        rest[key][kInside] = std::move(inside);
      }
    }
    if (!value.is_array() || !known->is_array()) continue;
    for (const Json& item : value) {
      if (!item.is_object() || !item.contains("id") || !item["id"].is_string()) continue;
      const auto id = item["id"].get<std::string>();
      const Json* same = item_of(*known, id);
      if (same == nullptr) continue;
      if (Json inside = left_over(item, *same); !inside.empty()) {
        rest[key][kItems][id] = std::move(inside);
      }
    }
  }
  return rest;
}

void put_back(Json& written, const Json& rest) {
  for (const auto& [key, value] : rest.items()) {
    const auto known = written.find(key);
    const bool part = value.is_object() && (value.contains(kInside) || value.contains(kItems));
    if (!part) {
      if (known == written.end()) written[key] = value;
      continue;
    }
    if (known == written.end()) continue;
    if (value.contains(kInside) && known->is_object()) put_back(*known, value[kInside]);
    if (!value.contains(kItems) || !known->is_array()) continue;
    for (Json& item : *known) {
      if (!item.is_object() || !item.contains("id")) continue;
      const auto found = value[kItems].find(item["id"].get<std::string>());
      if (found != value[kItems].end()) put_back(item, *found);
    }
  }
}

Plan read_plan(Fields f) {
  Plan plan;
  plan.site = f.maybe_text("site");
  plan.name = f.maybe_text("name");
  const std::string units = f.maybe_text("units");
  if (units == "us") {
    plan.units = Units::us;
  } else if (!units.empty() && units != "si") {
    f.refuse("units", fmt::format("is \"{}\"; si or us was expected", units));
  }
  for (const Fields& item : f.objects("people", most::kPeople))
    plan.people.push_back(read_person(item));
  for (const Fields& item : f.objects("mixes", most::kMixes)) plan.mixes.push_back(read_mix(item));
  for (const Fields& item : f.objects("elements", most::kElements))
    plan.elements.push_back(read_element(item));
  std::size_t motors = 0;
  for (const Element& element : plan.elements) {
    for (const Row& row : element.rows) motors += row.motors.size();
  }
  if (f.bounds() == Bounds::kept && motors > most::kAllMotors) {
    f.refuse("elements",
             fmt::format("hang {} motors; a plan may have {}", motors, most::kAllMotors),
             "Share the work out over several pours");
  }
  if (plan.mixes.empty()) f.refuse("mixes", "the plan needs at least one mix");
  if (plan.elements.empty()) f.refuse("elements", "the plan needs at least one element");
  for (const Fields& item : f.objects("power", most::kInverters))
    plan.power.push_back(read_inverter(item));
  unique_ids(f, "people", plan.people);
  unique_ids(f, "mixes", plan.mixes);
  unique_ids(f, "elements", plan.elements);
  unique_ids(f, "power", plan.power);
  if (f.has("motor_type")) {
    Fields type{f.object("motor_type"), f.where() + ", motor_type", f.bounds()};
    plan.motor_type =
        MotorType{amperes(type.number("amps", kAmps)), kilonewtons(type.number("force_kn", kForce)),
                  vibrations_per_minute(type.number("vpm_max", kSpeed))};
  }
  if (f.has("limits"))
    plan.limits = read_limits({f.object("limits"), f.where() + ", limits", f.bounds()});
  if (const std::string name = f.maybe_text("pressure_method"); !name.empty()) {
    const auto method = trade::parse_pressure_method(name);
    if (!method) {
      f.refuse("pressure_method", fmt::format("is \"{}\"", name),
               "Use aci347, ciria108 or din18218");
    }
    plan.pressure_method = *method;
  }
  if (const Json rest = left_over(f.whole(), known_json(plan)); !rest.empty()) {
    plan.extra = rest.dump();
    if (f.bounds() == Bounds::kept && plan.extra.size() > most::kExtraBytes) {
      f.refuse(rest.items().begin().key(),
               fmt::format("and other fields this version does not know hold {} bytes; they may "
                           "hold {}",
                           plan.extra.size(), most::kExtraBytes),
               "Keep what is so long in a file of its own");
    }
  }
  return plan;
}

Json patch_json(const Patch& p) {
  return {
      {"x", in_metres(p.x)}, {"z", in_metres(p.z)}, {"w", in_metres(p.w)}, {"h", in_metres(p.h)}};
}

Json lengths_json(const std::vector<Length>& lengths) {
  Json list = Json::array();
  for (const Length& l : lengths) list.push_back(in_metres(l));
  return list;
}

Json row_json(const Row& row) {
  Json motors = Json::array();
  for (const Motor& m : row.motors) {
    motors.push_back({{"id", m.id.text},
                      {"x", in_metres(m.x)},
                      {"reach_x", in_metres(m.reach_x)},
                      {"reach_z", in_metres(m.reach_z)}});
  }
  return {{"id", row.id.text},
          {"side", to_text(row.side)},
          {"z", in_metres(row.z)},
          {"motors", motors},
          {"serves", row.serves}};
}

Json element_json(const Element& e) {
  Json json{{"id", e.id.text},
            {"kind", to_text(e.kind)},
            {"length", in_metres(e.length)},
            {"height", in_metres(e.height)},
            {"thickness", in_metres(e.thickness)},
            {"bays", lengths_json(e.bays)},
            {"lifts", lengths_json(e.lifts)}};
  if (e.batter_deg != 0) json["batter_deg"] = e.batter_deg;
  if (e.form_rating) json["form_rating_kpa"] = tidy(in_kilopascals(*e.form_rating));
  if (e.form_mass) json["form_mass_kg_m2"] = in_kilograms_per_m2(*e.form_mass);
  if (e.rise_limit) json["rise_limit"] = tidy(in_metres_per_hour(*e.rise_limit));
  for (const Patch& opening : e.openings) json["openings"].push_back(patch_json(opening));
  for (const CongestedZone& zone : e.congested) {
    Json written = patch_json(zone);
    if (zone.dose_min) written["dose_min_s"] = in_seconds(*zone.dose_min);
    json["congested"].push_back(std::move(written));
  }
  json["rows"] = Json::array();
  for (const Row& row : e.rows) json["rows"].push_back(row_json(row));
  return json;
}

Json limits_json(const Limits& limits) {
  Json json = Json::object();
  const auto put = [&](const char* field, const auto& limit, double value) {
    if (limit.from == LimitFrom::plan) json[field] = value;
  };
  put("dose_min_s", limits.dose_min, in_seconds(limits.dose_min.value));
  put("dose_max_s", limits.dose_max, in_seconds(limits.dose_max.value));
  put("under_share_max", limits.under_share_max, limits.under_share_max.value);
  put("rise_window_s", limits.rise_window, in_seconds(limits.rise_window.value));
  put("load_age_max_s", limits.load_age_max, in_seconds(limits.load_age_max.value));
  put("temp_min", limits.temp_min, limits.temp_min.value.degrees);
  put("temp_max", limits.temp_max, limits.temp_max.value.degrees);
  put("volume_tolerance", limits.volume_tolerance, limits.volume_tolerance.value);
  put("insert_spacing_factor", limits.insert_spacing_factor, limits.insert_spacing_factor.value);
  put("knit_depth", limits.knit_depth, in_metres(limits.knit_depth.value));
  return json;
}

Json inverter_json(const Inverter& inverter) {
  Json motors = Json::array();
  for (const MotorId& motor : inverter.motors) motors.push_back(motor.text);
  Json json{{"id", inverter.id.text},
            {"volts", in_volts(inverter.volts)},
            {"max_amps", in_amperes(inverter.max_amps)},
            {"motors", motors}};
  if (inverter.cable) {
    json["cable"] = {{"mm2", tidy(in_square_metres(inverter.cable->section) * 1e6)},
                     {"length", in_metres(inverter.cable->length)}};
  }
  return json;
}

Json known_json(const Plan& plan) {
  Json json = Json::object();
  json["site"] = plan.site;
  json["name"] = plan.name;
  json["units"] = plan.units == Units::us ? "us" : "si";
  json["pressure_method"] = std::string{trade::to_text(plan.pressure_method)};
  for (const Person& p : plan.people) {
    json["people"].push_back({{"id", p.id.text}, {"name", p.name}, {"role", p.role}});
  }
  for (const Mix& m : plan.mixes) {
    json["mixes"].push_back({{"id", m.id.text},
                             {"unit_weight", tidy(in_kilonewtons_per_m3(m.unit_weight))},
                             {"slump", in_metres(m.slump)},
                             {"initial_set_h", tidy(in_hours(m.initial_set))},
                             {"set_ref_temp", m.set_reference.degrees},
                             {"cement_class", std::string{trade::to_text(m.cement)}}});
  }
  for (const Element& e : plan.elements) json["elements"].push_back(element_json(e));
  for (const Inverter& i : plan.power) json["power"].push_back(inverter_json(i));
  if (plan.motor_type) {
    json["motor_type"] = {{"amps", in_amperes(plan.motor_type->amps)},
                          {"force_kn", tidy(in_kilonewtons(plan.motor_type->force))},
                          {"vpm_max", tidy(in_vibrations_per_minute(plan.motor_type->top_speed))}};
  }
  if (const Json limits = limits_json(plan.limits); !limits.empty()) json["limits"] = limits;
  return json;
}

}  // namespace

Result<Plan> parse_plan(std::string_view json, const std::string& where, Bounds bounds) {
  try {
    const Json parsed = parse_json(json, where);
    return read_plan({parsed, where, bounds});
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

std::string to_json(const Plan& plan, bool indented) {
  Json json = known_json(plan);
  if (!plan.extra.empty()) put_back(json, Json::parse(plan.extra));
  return json.dump(indented ? 2 : -1);
}

}  // namespace rb
