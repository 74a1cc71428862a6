// Plans written as JSON, unknown fields with them.
#include "pour/plan/plan_writing.h"
#include "pour/plan/plan_figures.h"
#include "pour/plan/plan_json.h"
#include "pour/plan/plan_power_json.h"

namespace rb {

namespace {

// What is left over is told in three parts, each left out when empty: fields nobody knows, by name;
// what is left inside an object, by the object's field; inside the items of a list, by the list's
// field and the item's key. So no field of a user's can be taken for one of ours.
constexpr const char* kFields = "fields";
constexpr const char* kInside = "inside";
constexpr const char* kItems = "items";

const Json& part_of(const Json& rest, const char* part) {
  static const Json kNone = Json::object();
  const auto found = rest.find(part);
  return found == rest.end() ? kNone : *found;
}

// Rows of two sides may share an id: what is written of an item tells it from the others.
std::string key_of(const Json& written) {
  std::string key = written["id"].get<std::string>();
  if (const auto side = written.find("side"); side != written.end()) {
    key += '\n' + side->get<std::string>();
  }
  return key;
}

bool has_id(const Json& item) {
  return item.is_object() && item.contains("id") && item["id"].is_string();
}

// What was written of an item that was read.
const Json* written_of(const Json& list, const Json& read) {
  const std::string near = to_text(Side::near_side);
  for (const Json& item : list) {
    if (!has_id(item) || item["id"] != read["id"]) continue;
    if (!item.contains("side") || item["side"] == read.value("side", Json(near))) return &item;
  }
  return nullptr;
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
  if (e.section != trade::Section::rect) json["section"] = to_text(e.section);
  if (e.batter_deg != 0) json["batter_deg"] = e.batter_deg;
  if (e.strip_permit) json["strip_permit"] = true;
  for (const ElementId& other : e.meets) json["meets"].push_back(other.text);
  for (const trade::StrengthPoint& point : e.strength_curve) {
    json["strength_curve"].push_back(
        {tidy(in_hours(point.age)), tidy(in_megapascals(point.strength))});
  }
  write_figures(json, e);
  for (const Patch& opening : e.openings) json["openings"].push_back(patch_json(opening));
  for (const Beam& beam : e.beams) {
    Json written{{"w", in_metres(beam.width)}, {"d", in_metres(beam.depth)}};
    if (beam.x) written["x"] = in_metres(*beam.x);
    json["beams"].push_back(std::move(written));
  }
  for (const CongestedZone& zone : e.congested) {
    Json written = patch_json(zone);
    if (zone.dose_min) written["dose_min_s"] = in_seconds(*zone.dose_min);
    json["congested"].push_back(std::move(written));
  }
  json["rows"] = Json::array();
  for (const Row& row : e.rows) json["rows"].push_back(row_json(row));
  return json;
}

}  // namespace

Json left_over(const Json& read, const Json& written) {
  Json rest = Json::object();
  for (const auto& [key, value] : read.items()) {
    const auto known = written.find(key);
    if (known == written.end()) {
      if (!value.is_null()) rest[kFields][key] = value;
      continue;
    }
    if (value.is_object() && known->is_object()) {
      if (Json inside = left_over(value, *known); !inside.empty()) {
        rest[kInside][key] = std::move(inside);
      }
    }
    if (!value.is_array() || !known->is_array()) continue;
    for (const Json& item : value) {
      if (!has_id(item)) continue;
      const Json* same = written_of(*known, item);
      if (same == nullptr) continue;
      if (Json inside = left_over(item, *same); !inside.empty()) {
        rest[kItems][key][key_of(*same)] = std::move(inside);
      }
    }
  }
  return rest;
}

void put_back(Json& written, const Json& rest) {
  for (const auto& [key, value] : part_of(rest, kFields).items()) {
    if (!written.contains(key)) written[key] = value;
  }
  for (const auto& [key, inside] : part_of(rest, kInside).items()) {
    if (written.contains(key) && written[key].is_object()) put_back(written[key], inside);
  }
  for (const auto& [key, items] : part_of(rest, kItems).items()) {
    if (!written.contains(key) || !written[key].is_array()) continue;
    for (Json& item : written[key]) {
      if (!has_id(item)) continue;
      if (const auto found = items.find(key_of(item)); found != items.end()) put_back(item, *found);
    }
  }
}

std::size_t bytes_left(const Json& rest) {
  const Json& fields = part_of(rest, kFields);
  std::size_t bytes = fields.empty() ? 0 : fields.dump().size();
  for (const Json& inside : part_of(rest, kInside)) bytes += bytes_left(inside);
  for (const Json& items : part_of(rest, kItems)) {
    for (const Json& inside : items) bytes += bytes_left(inside);
  }
  return bytes;
}

std::string first_left(const Json& rest) {
  for (const char* part : {kFields, kInside, kItems}) {
    if (rest.contains(part)) return rest[part].items().begin().key();
  }
  return {};
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
    write_figures(json["mixes"].back(), m);
  }
  for (const Element& e : plan.elements) json["elements"].push_back(element_json(e));
  for (const Inverter& i : plan.power) json["power"].push_back(inverter_json(i));
  if (plan.motor_type) json["motor_type"] = motor_type_json(*plan.motor_type);
  Json limits = Json::object();
  write_figures(limits, plan.limits);
  if (!limits.empty()) json["limits"] = std::move(limits);
  return json;
}

std::string to_json(const Plan& plan, bool indented) {
  Json json = known_json(plan);
  if (!plan.extra.empty()) put_back(json, Json::parse(plan.extra));
  return json.dump(indented ? 2 : -1);
}

}  // namespace rb
