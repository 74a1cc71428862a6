// Events from and to lines of JSON: one reader and one writer a kind, in one table.
#include "pour/event_json.h"

#include <fmt/format.h>

#include <array>
#include <type_traits>

#include "pour/json_fields.h"

namespace rb {

namespace {

constexpr Span kHeight{0, 200, "m"};
constexpr Span kPosition{0, 500, "m"};
constexpr Span kSpacing{0, 20, "m", true};
constexpr Span kSeconds{0, 86400, "s"};
constexpr Span kUncertain{0, 86400, "s"};
constexpr Span kSpeed{0, 60000, "vpm", true};
constexpr Span kVolume{0, 100, "m3", true};
constexpr Span kSlump{0, 0.9, "m"};
constexpr Span kTemp{-40, 80, "degC"};
constexpr Span kAir{0, 30, "per cent"};
constexpr Span kDensity{500, 6000, "kg/m3"};
constexpr Span kResistance{0, 100, "MPa", true};
constexpr long kMostBays = 500;
constexpr long kMostLifts = 999;

ElementId element_of(Fields& f) {
  return ElementId{f.id("element")};
}
int lift_of(Fields& f) {
  return static_cast<int>(f.integer("lift", 1, kMostLifts));
}

std::optional<int> bay_of(Fields& f) {
  const auto bay = f.maybe_integer("bay", 1, kMostBays);
  return bay ? std::optional<int>{static_cast<int>(*bay)} : std::nullopt;
}

Side side_of(Fields& f) {
  const std::string side = f.maybe_text("side");
  if (side.empty() || side == "near") return Side::near_side;
  if (side != "far") f.refuse("side", fmt::format("is \"{}\"; near or far was expected", side));
  return Side::far_side;
}

RowPlace place_of(Fields& f) {
  RowPlace place;
  place.element = element_of(f);
  place.side = side_of(f);
  place.row = RowId{f.id("row")};
  return place;
}

template <class T, class Make>
std::optional<T> maybe(Fields& f, const char* field, const Span& span, Make make) {
  const auto value = f.maybe_number(field, span);
  return value ? std::optional<T>{make(*value)} : std::nullopt;
}

void read(Fields& f, event::PourOpen& e) {
  e.pour = PourId{f.id("pour")};
  auto plan = parse_plan(f.object("plan").dump(), f.where() + ", plan", f.bounds());
  if (!plan) throw BadField{plan.error()};
  e.plan = std::make_shared<const Plan>(std::move(*plan));
}
void read(Fields& f, event::Ready& e) {
  e = {f.text("item"), f.boolean("ok"), f.maybe_text("note")};
}
void read(Fields& f, event::Hang& e) {
  e.place = place_of(f);
  if (!f.has("motors")) f.refuse("motors", "is missing", "List the motors hung, or []");
  for (const std::string& motor : f.ids("motors", most::kMotors)) e.motors.emplace_back(motor);
  e.cables = f.boolean("cables");
}
void read(Fields& f, event::TakeDown& e) {
  e.place = place_of(f);
}
void read(Fields& f, event::LiftStart& e) {
  e = {element_of(f), lift_of(f)};
}
void read(Fields& f, event::Top& e) {
  e = {element_of(f), metres(f.number("height", kHeight)), bay_of(f)};
}
void read(Fields& f, event::LiftEnd& e) {
  e = {element_of(f), lift_of(f), metres(f.number("height", kHeight)), bay_of(f)};
}
void read(Fields& f, event::Run& e) {
  e.place = place_of(f);
  e.speed = maybe<Frequency>(f, "vpm", kSpeed, vibrations_per_minute);
}
void read(Fields& f, event::Rest& e) {
  e.place = place_of(f);
}
void read(Fields& f, event::Insert& e) {
  e.element = element_of(f);
  e.lift = lift_of(f);
  e.bay = bay_of(f);
  e.group = static_cast<int>(f.integer("group", 1, 5));
  e.spacing = metres(f.number("spacing", kSpacing));
  e.each = seconds(f.number("seconds", kSeconds));
  e.depth_below = metres(f.number("depth_below", {0, 20, "m"}));
}
void read(Fields& f, event::Truck& e) {
  e.ticket = TicketId{f.id("ticket")};
  e.mix = MixId{f.id("mix")};
  e.volume = cubic_metres(f.number("volume", kVolume));
  e.batched = f.moment("batched");
  e.arrived = f.moment("arrived");
  if (e.arrived < e.batched) f.refuse("arrived", "is before batched", "Check both times");
}
void read(Fields& f, event::Discharge& e) {
  e.ticket = TicketId{f.id("ticket")};
  if (f.has("element")) e.element = element_of(f);
  e.ended = f.maybe_moment("ended");
}
void read(Fields& f, event::Test& e) {
  e.ticket = TicketId{f.id("ticket")};
  e.slump = maybe<Length>(f, "slump", kSlump, metres);
  e.temp = maybe<Celsius>(f, "temp", kTemp, celsius);
  e.air = f.maybe_number("air", kAir);
  e.density = maybe<MassPerVolume>(f, "density", kDensity, kilograms_per_m3);
}
void read(Fields& f, event::AirTemp& e) {
  e.temp = celsius(f.number("temp", kTemp));
}
void read(Fields& f, event::Hold& e) {
  e.reason = f.text("reason");
}
void read(Fields& f, event::Resume& e) {
  e.reason = f.maybe_text("reason");
}
void read(Fields& f, event::Note& e) {
  e.text = f.text("text");
  if (f.has("element")) e.element = element_of(f);
  if (f.has("lift")) e.lift = lift_of(f);
}
void read(Fields& f, event::Fix& e) {
  e = {EventId{f.id("target")}, f.object("set").dump(), f.text("why")};
  f.hold_texts("set", f.object("set"));
}
void read(Fields& f, event::Strike& e) {
  e = {EventId{f.id("target")}, f.text("why")};
}
void read(Fields&, event::PourClose&) {}
void read(Fields& f, event::Sign& e) {
  e = {f.text("role"), f.text("verdict"), f.maybe_text("comment")};
  if (e.role != "foreman" && e.role != "inspector" && e.role != "superintendent") {
    f.refuse("role",
             fmt::format("is \"{}\"; foreman, inspector or superintendent was expected", e.role));
  }
}
void read(Fields& f, event::Strip& e) {
  e = {element_of(f), side_of(f)};
}
void read(Fields& f, event::Blemish& e) {
  e.element = element_of(f);
  e.side = side_of(f);
  e.kind = f.text("kind");
  e.patch = {metres(f.number("x", kPosition)), metres(f.number("z", kPosition)),
             metres(f.number("w", kPosition)), metres(f.number("h", kPosition))};
  e.note = f.maybe_text("note");
}
void read(Fields& f, event::Repair& e) {
  e = {EventId{f.id("target")}, f.maybe_text("note")};
}

void read(Fields& f, event::Penetration& e) {
  e.mix = MixId{f.id("mix")};
  e.mixed = f.moment("mixed");
  e.resistance = kilopascals(f.number("resistance", kResistance) * 1000);
  e.temp = maybe<Celsius>(f, "temp", kTemp, celsius);
}

void write(Json& j, const RowPlace& p) {
  j["element"] = p.element.text;
  if (p.side == Side::far_side) j["side"] = "far";
  j["row"] = p.row.text;
}
void write_text(Json& j, const char* field, const std::string& text) {
  if (!text.empty()) j[field] = text;
}
void write_bay(Json& j, const std::optional<int>& bay) {
  if (bay) j["bay"] = *bay;
}

void write(Json& j, const event::PourOpen& e) {
  j["pour"] = e.pour.text;
  j["plan"] = Json::parse(to_json(*e.plan));
}
void write(Json& j, const event::Ready& e) {
  j["item"] = e.item;
  j["ok"] = e.ok;
  write_text(j, "note", e.note);
}
void write(Json& j, const event::Hang& e) {
  write(j, e.place);
  j["motors"] = Json::array();
  for (const MotorId& motor : e.motors) j["motors"].push_back(motor.text);
  j["cables"] = e.cables;
}
void write(Json& j, const event::TakeDown& e) {
  write(j, e.place);
}
void write(Json& j, const event::LiftStart& e) {
  j["element"] = e.element.text;
  j["lift"] = e.lift;
}
void write(Json& j, const event::Top& e) {
  j["element"] = e.element.text;
  j["height"] = in_metres(e.height);
  write_bay(j, e.bay);
}
void write(Json& j, const event::LiftEnd& e) {
  j["element"] = e.element.text;
  j["lift"] = e.lift;
  j["height"] = in_metres(e.height);
  write_bay(j, e.bay);
}
void write(Json& j, const event::Run& e) {
  write(j, e.place);
  if (e.speed) j["vpm"] = tidy(in_vibrations_per_minute(*e.speed));
}
void write(Json& j, const event::Rest& e) {
  write(j, e.place);
}
void write(Json& j, const event::Insert& e) {
  j["element"] = e.element.text;
  j["lift"] = e.lift;
  write_bay(j, e.bay);
  j["group"] = e.group;
  j["spacing"] = in_metres(e.spacing);
  j["seconds"] = in_seconds(e.each);
  j["depth_below"] = in_metres(e.depth_below);
}
void write(Json& j, const event::Truck& e) {
  j["ticket"] = e.ticket.text;
  j["mix"] = e.mix.text;
  j["volume"] = in_cubic_metres(e.volume);
  j["batched"] = to_text(e.batched);
  j["arrived"] = to_text(e.arrived);
}
void write(Json& j, const event::Discharge& e) {
  j["ticket"] = e.ticket.text;
  if (e.element) j["element"] = e.element->text;
  if (e.ended) j["ended"] = to_text(*e.ended);
}
void write(Json& j, const event::Test& e) {
  j["ticket"] = e.ticket.text;
  if (e.slump) j["slump"] = in_metres(*e.slump);
  if (e.temp) j["temp"] = e.temp->degrees;
  if (e.air) j["air"] = *e.air;
  if (e.density) j["density"] = in_kilograms_per_m3(*e.density);
}
void write(Json& j, const event::AirTemp& e) {
  j["temp"] = e.temp.degrees;
}
void write(Json& j, const event::Hold& e) {
  j["reason"] = e.reason;
}
void write(Json& j, const event::Resume& e) {
  write_text(j, "reason", e.reason);
}
void write(Json& j, const event::Note& e) {
  j["text"] = e.text;
  if (e.element) j["element"] = e.element->text;
  if (e.lift) j["lift"] = *e.lift;
}
void write(Json& j, const event::Fix& e) {
  j["target"] = e.target.text;
  j["set"] = Json::parse(e.set);
  j["why"] = e.why;
}
void write(Json& j, const event::Strike& e) {
  j["target"] = e.target.text;
  j["why"] = e.why;
}
void write(Json&, const event::PourClose&) {}
void write(Json& j, const event::Sign& e) {
  j["role"] = e.role;
  j["verdict"] = e.verdict;
  write_text(j, "comment", e.comment);
}
void write(Json& j, const event::Strip& e) {
  j["element"] = e.element.text;
  j["side"] = to_text(e.side);
}
void write(Json& j, const event::Blemish& e) {
  j["element"] = e.element.text;
  j["side"] = to_text(e.side);
  j["kind"] = e.kind;
  j["x"] = in_metres(e.patch.x);
  j["z"] = in_metres(e.patch.z);
  j["w"] = in_metres(e.patch.w);
  j["h"] = in_metres(e.patch.h);
  write_text(j, "note", e.note);
}
void write(Json& j, const event::Repair& e) {
  j["target"] = e.target.text;
  j["note"] = e.note;
}

void write(Json& j, const event::Penetration& e) {
  j["mix"] = e.mix.text;
  j["mixed"] = to_text(e.mixed);
  j["resistance"] = tidy(in_kilopascals(e.resistance) / 1000);
  if (e.temp) j["temp"] = e.temp->degrees;
}

using Reader = Happening (*)(Fields&);

template <std::size_t I>
Happening read_kind(Fields& f) {
  std::variant_alternative_t<I, Happening> e{};
  read(f, e);
  return Happening{std::move(e)};
}

template <std::size_t... I>
constexpr std::array<Reader, sizeof...(I)> readers(std::index_sequence<I...>) {
  return {&read_kind<I>...};
}
constexpr auto kReaders = readers(std::make_index_sequence<std::variant_size_v<Happening>>{});

template <std::size_t... I>
std::vector<std::string> kinds(std::index_sequence<I...>) {
  return {kind_text(Happening{std::in_place_index<I>})...};
}

std::size_t kind_index(Fields& f) {
  static const std::vector<std::string> all =
      kinds(std::make_index_sequence<std::variant_size_v<Happening>>{});
  const std::string kind = f.id("do");
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i] == kind) return i;
  }
  f.refuse("do", fmt::format("is \"{}\", a kind this version does not know", kind),
           fmt::format("Known kinds: {}", fmt::join(all, ", ")));
}

Event read_event(const Json& object, const std::string& where, Bounds bounds) {
  Fields f{object, where, bounds};
  Event event;
  const std::size_t kind = kind_index(f);
  event.at = f.moment("at");
  event.by = PersonId{f.id("by")};
  event.id = EventId{f.maybe_id("id")};
  if (f.has("entered")) {
    event.entry =
        Entry{f.moment("entered"), seconds(f.number("mono", {0, 1e12, "s"})), f.id("boot")};
  }
  event.uncertain = seconds(f.maybe_number("uncertain_s", kUncertain).value_or(0));
  event.what = kReaders.at(kind)(f);
  event.extra = f.unknown();
  return event;
}

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
  std::visit([&](const auto& what) { write(json, what); }, event.what);
  return json;
}

void hold_line(std::size_t bytes, std::size_t most, const std::string& where, const char* what) {
  if (bytes <= most) return;
  throw BadField{Error{Error::Kind::input, where,
                       fmt::format("is {} bytes long; {} may have {}", bytes, what, most),
                       "Shorten its texts, or leave out fields that are not of a pour script"}};
}

}  // namespace

Result<Event> parse_event(std::string_view line, const std::string& where, Bounds bounds) {
  try {
    const bool kept = bounds == Bounds::kept;
    if (kept) hold_line(line.size(), most::kOpenLineBytes, where, "a line");
    Event event = read_event(parse_json(line, where), where, bounds);
    if (kept && !std::holds_alternative<event::PourOpen>(event.what)) {
      hold_line(line.size(), most::kLineBytes, where, "a line that opens no pour");
    }
    return event;
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

std::string to_line(const Event& event) {
  return event_json(event).dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<Event> with_fields(const Event& event, const std::string& fields, const std::string& where) {
  try {
    const Json set = parse_json(fields, where);
    for (const char* kept : {"do", "id", "entered", "mono", "boot"}) {
      if (set.contains(kept)) {
        return fail(Error::Kind::input, where + ", field set",
                    fmt::format("changes \"{}\", which stands", kept),
                    "Strike the event and enter it anew");
      }
    }
    Json json = event_json(event);
    if (set.contains("at")) json.erase("uncertain_s");  // who puts a time right vouches for it
    json.merge_patch(set);
    Event changed = read_event(json, where, Bounds::as_it_is);
    if (changed.at == event.at && changed.by == event.by && changed.what == event.what &&
        changed.uncertain == event.uncertain) {
      return fail(Error::Kind::input, where + ", field set", "changes nothing the event tells",
                  "Name fields of the event with other values than they have");
    }
    return changed;
  } catch (const BadField& bad) {
    return Failed{bad.error};
  }
}

}  // namespace rb
