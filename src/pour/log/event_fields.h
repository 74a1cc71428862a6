// Reading and writing the fields of an event kind by its descriptor. Inside this room.
#pragma once

#include <type_traits>

#include "pour/log/event.h"
#include "pour/plan/json_fields.h"
#include "pour/plan/plan_json.h"

namespace rb {

/// A quantity from and to the number that stands for it in a script, in the field's unit.
template <class T>
struct InScript;
template <>
struct InScript<double> {
  static double make(double v, const Span&) { return v; }
  static double number(double v, const Span&) { return v; }
};
template <>
struct InScript<Length> {
  static Length make(double v, const Span&) { return metres(v); }
  static double number(Length v, const Span&) { return in_metres(v); }
};
template <>
struct InScript<Volume> {
  static Volume make(double v, const Span&) { return cubic_metres(v); }
  static double number(Volume v, const Span&) { return in_cubic_metres(v); }
};
template <>
struct InScript<Seconds> {
  static Seconds make(double v, const Span&) { return seconds(v); }
  static double number(Seconds v, const Span&) { return in_seconds(v); }
};
template <>
struct InScript<Celsius> {
  static Celsius make(double v, const Span&) { return celsius(v); }
  static double number(Celsius v, const Span&) { return v.degrees; }
};
template <>
struct InScript<Frequency> {
  static Frequency make(double v, const Span&) { return vibrations_per_minute(tidy(v)); }
  static double number(Frequency v, const Span&) { return tidy(in_vibrations_per_minute(v)); }
};
template <>
struct InScript<Velocity> {
  static Velocity make(double v, const Span&) { return metres_per_second(v); }
  static double number(Velocity v, const Span&) { return in_metres_per_second(v); }
};
template <>
struct InScript<MassPerVolume> {
  static MassPerVolume make(double v, const Span&) { return kilograms_per_m3(v); }
  static double number(MassPerVolume v, const Span&) { return in_kilograms_per_m3(v); }
};
template <>
struct InScript<Potential> {
  static Potential make(double v, const Span&) { return volts(v); }
  static double number(Potential v, const Span&) { return in_volts(v); }
};
/// In MPa: the resistance of mortar to a needle, the strength of a specimen.
template <>
struct InScript<Pressure> {
  static Pressure make(double v, const Span&) { return kilopascals(tidy(v) * 1000); }
  static double number(Pressure v, const Span&) { return tidy(in_kilopascals(v) / 1000); }
};

template <class T>
concept Quantity = requires(double v, const Span& span) {
  InScript<T>::make(v, span);
};
template <class T>
concept Named = requires(T id) {
  id.text;
};
template <class T>
inline constexpr bool kNames = false;
template <Named T>
inline constexpr bool kNames<std::vector<T>> = true;
template <class T>
inline constexpr bool kMaybe = false;
template <class T>
inline constexpr bool kMaybe<std::optional<T>> = true;

/// An event as a line tells it.
Json event_json(const Event& event);

/// One form for what is one value: 2.0 is 2.
Json canonical(const Json& value);

/// Points of a line on the face, none where the field is left out.
std::vector<trade::FacePoint> read_outline(Fields& f, const char* field, const Span& span);

// By the value's type alone: a kind's own code for each of its fields would be as long again.
template <class T>
void read_value(Fields& f, T& value, const char* name, const Span& span, Need need) {
  if constexpr (kMaybe<T>) {
    using Some = typename T::value_type;
    if (!f.has(name)) return;
    value.emplace();
    if constexpr (std::is_same_v<Some, int>) {
      *value = static_cast<int>(
          f.integer(name, static_cast<long>(span.least), static_cast<long>(span.most)));
    } else if constexpr (std::is_same_v<Some, Moment>) {
      *value = f.moment(name);
    } else if constexpr (std::is_same_v<Some, Side>) {
      *value = f.side();
    } else if constexpr (std::is_enum_v<Some>) {
      *value = static_cast<Some>(f.one_of(name, words_of(Some{})));
    } else if constexpr (std::is_same_v<Some, Hex>) {
      value->digits = f.hex(name, span);
    } else if constexpr (Named<Some>) {
      value->text = f.id(name);
    } else {
      *value = InScript<Some>::make(f.number(name, span), span);
    }
  } else if constexpr (std::is_same_v<T, std::shared_ptr<const Plan>>) {
    auto plan = parse_plan(f.object(name).dump(), inside(f.where(), "plan"), f.bounds());
    if (!plan) throw BadField{plan.error()};
    value = std::make_shared<const Plan>(std::move(*plan));
  } else if constexpr (kNames<T>) {
    if (!f.has(name)) {
      if (need == Need::may) return;
      f.refuse(name, said("is missing"), said("List the motors hung, or []"));
    }
    for (std::string& id : f.ids(name, most::kMotors)) value.emplace_back(std::move(id));
  } else if constexpr (std::is_same_v<T, std::vector<std::string>>) {
    value = f.texts(name, most::kOpenFindings);
  } else if constexpr (std::is_same_v<T, Hex>) {
    value.digits = f.hex(name, span);
  } else if constexpr (std::is_same_v<T, std::string>) {
    value = need == Need::must ? f.text(name) : f.maybe_text(name);
  } else if constexpr (std::is_same_v<T, bool>) {
    value = f.boolean(name);
  } else if constexpr (std::is_same_v<T, int>) {
    value = static_cast<int>(
        f.integer(name, static_cast<long>(span.least), static_cast<long>(span.most)));
  } else if constexpr (std::is_same_v<T, Moment>) {
    value = f.moment(name);
  } else if constexpr (std::is_same_v<T, Side>) {
    value = f.side();
  } else if constexpr (std::is_enum_v<T>) {
    value = static_cast<T>(f.one_of(name, words_of(T{})));
  } else if constexpr (Named<T>) {
    value.text = need == Need::must ? f.id(name) : f.maybe_id(name);
  } else {
    value = InScript<T>::make(f.number(name, span), span);
  }
}
template <class Kind, class T>
void read_field(Fields& f, Kind& kind, const Field<Kind, T>& field) {
  read_value(f, kind.*(field.at), field.name, field.span, field.need);
}
template <class Kind, class T>
void read_field(Fields& f, Kind& kind, const PlaceField<Kind, T>& field) {
  T& place = kind.*(field.at);
  place.element.text = f.id("element");
  place.side = f.side();
  place.row.text = f.id("row");
}
template <class Kind, class T>
void read_field(Fields& f, Kind& kind, const PatchField<Kind, T>& field) {
  const auto at = [&](const char* name) { return metres(f.number(name, field.span)); };
  const Length x = at("x"), z = at("z"), w = at("w"), h = at("h");
  kind.*(field.at) = {x, z, w, h};
}
template <class Kind, class T>
void read_field(Fields& f, Kind& kind, const ObjectField<Kind, T>& field) {
  const Json& object = f.object(field.name);
  f.hold_texts(field.name, object);
  kind.*(field.at) = canonical(object).dump();
}

template <class Kind, class T>
void read_field(Fields& f, Kind& kind, const ValueField<Kind, T>& field) {
  const Json& value = f.any(field.name);
  f.hold_texts(field.name, value);
  kind.*(field.at) = canonical(value).dump();
}
template <class Kind, class T>
void read_field(Fields& f, Kind& kind, const OutlineField<Kind, T>& field) {
  kind.*(field.at) = read_outline(f, field.name, field.span);
}

template <class T>
Json script_value(const T& value, const Span& span) {
  if constexpr (std::is_same_v<T, std::shared_ptr<const Plan>>) {
    return Json::parse(to_json(*value));
  } else if constexpr (kNames<T>) {
    Json list = Json::array();
    for (const auto& name : value) list.push_back(name.text);
    return list;
  } else if constexpr (std::is_enum_v<T> || std::is_same_v<T, Moment>) {
    return to_text(value);
  } else if constexpr (Named<T>) {
    return value.text;
  } else if constexpr (std::is_same_v<T, Hex>) {
    return value.digits;
  } else if constexpr (Quantity<T>) {
    return InScript<T>::number(value, span);
  } else {
    return value;
  }
}

template <class T>
void write_value(Json& json, const T& value, const char* name, const Span& span, Need need) {
  if constexpr (kMaybe<T>) {
    if (value) json[name] = script_value(*value, span);
  } else {
    if constexpr (std::is_same_v<T, std::string> || kNames<T> || Named<T> ||
                  std::is_same_v<T, std::vector<std::string>>) {
      if (need == Need::may && value == T{}) return;
    }
    json[name] = script_value(value, span);
  }
}
template <class Kind, class T>
void write_field(Json& json, const Kind& kind, const Field<Kind, T>& field) {
  write_value(json, kind.*(field.at), field.name, field.span, field.need);
}
template <class Kind, class T>
void write_field(Json& json, const Kind& kind, const PlaceField<Kind, T>& field) {
  const T& place = kind.*(field.at);
  json["element"] = place.element.text;
  if (place.side == Side::far_side) json["side"] = to_text(place.side);
  json["row"] = place.row.text;
}
template <class Kind, class T>
void write_field(Json& json, const Kind& kind, const PatchField<Kind, T>& field) {
  const T& patch = kind.*(field.at);
  json["x"] = in_metres(patch.x);
  json["z"] = in_metres(patch.z);
  json["w"] = in_metres(patch.w);
  json["h"] = in_metres(patch.h);
}
template <class Kind, class T>
void write_field(Json& json, const Kind& kind, const ObjectField<Kind, T>& field) {
  json[field.name] = Json::parse(kind.*(field.at));
}
template <class Kind, class T>
void write_field(Json& json, const Kind& kind, const ValueField<Kind, T>& field) {
  json[field.name] = Json::parse(kind.*(field.at));
}
template <class Kind, class T>
void write_field(Json& json, const Kind& kind, const OutlineField<Kind, T>& field) {
  for (const trade::FacePoint& point : kind.*(field.at)) {
    json[field.name].push_back({in_metres(point.x), in_metres(point.z)});
  }
}

}  // namespace rb
