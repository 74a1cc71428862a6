// Events to lines of JSON, by the descriptors of their kinds.
#include <cmath>
#include <utility>

#include "pour/log/event_fields.h"
#include "pour/log/event_json.h"
#include "pour/log/kind_fields.h"

namespace rb {

Json event_json(const Event& event) {
  Json json = event.extra.empty() ? Json::object() : Json::parse(event.extra);
  if (!event.id.empty()) json["id"] = event.id.text;
  json["at"] = to_text(event.at);
  json["by"] = event.by.text;
  json["do"] = kind_text(event.what);
  if (event.entry) {
    json["entered"] = to_text(event.entry->wall);
    json["mono"] = event.entry->steady.count();
    json["boot"] = event.entry->boot;
  }
  if (event.uncertain > Seconds{0}) json["uncertain_s"] = event.uncertain.count();
  std::visit(
      [&]<class Kind>(const Kind& kind) {
        for_fields<Kind>([&](const auto& field) { write_field(json, kind, field); });
      },
      event.what);
  return json;
}

std::string to_line(const Event& event) {
  return event_json(event).dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json canonical(const Json& value) {
  if (value.is_number_float()) {
    constexpr double kExact = 9007199254740992.0;  // 2^53: whole numbers up to it are exact
    const double number = value.get<double>();
    if (number != std::floor(number) || std::abs(number) > kExact) return value;
    return static_cast<long>(number);
  }
  if (!value.is_structured()) return value;
  Json copy = value;
  for (Json& part : copy) part = canonical(part);
  return copy;
}

event::Fix make_fix(const Event& before, const Event& after, std::string why,
                    std::optional<event::Chosen> chosen) {
  const Json was = event_json(before);
  const Json now = event_json(after);
  Json set = Json::object();
  for (const auto& [name, value] : now.items()) {
    if (!was.contains(name) || was.at(name) != value) set[name] = value;
  }
  for (const auto& [name, value] : was.items()) {
    if (!now.contains(name)) set[name] = nullptr;  // taken away
  }
  return {before.id, canonical(set).dump(), std::move(why), chosen};
}

}  // namespace rb
