#include "cli/plan_inputs.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdio>

#include <nlohmann/json.hpp>

#include "cli/say_both.h"
#include "cli/unit_input.h"
#include "pour/outlook/form.h"

namespace rb {

namespace {

constexpr const char* kAssumed = "assumed";

constexpr PlanInput kInputs[] = {
    {"length", "of the element: \"12 m\"", "", ""},
    {"height", "of the element, or a deck's width in plan: \"4.8 m\"", "", ""},
    {"thickness", "of the element: \"300 mm\"", "", ""},
    {"rating", "lateral pressure the form bears, from its designer: \"60 kPa\"", "", ""},
    {"initial-set", "of the mix, at the reference: \"5 h\"", "", ""},
    {"force", "of a motor at its speed: \"4 kN\"", "", ""},
    {"amps", "a motor draws in each phase: \"4.2 A\"", "", ""},
    {"kind", said("Use wall, column or deck"), "wall", kAssumed},
    {"element", "its name", "E1", kAssumed},
    {"section", "rect or round (a round column is as thick as it is long)", "rect", kAssumed},
    {"thickness-top", "where the element tapers: \"250 mm\"", "", "", true},
    {"batter", "of the face off plumb: \"4 deg\"", "", "", true},
    {"bay", "about how long a bay is", "3 m", "our own choice"},
    {"bays", "their own lengths from the left: \"4 m, 3 m, 5 m\"", "", "", true},
    {"openings", "x, z, width, height of each: \"2 m, 1 m, 1.2 m, 1.5 m; ...\"", "", "", true},
    {"beams", "under a deck: x, width, depth of each across it; width, depth of one along it; ...",
     "", "", true},
    {"form-mass", "of the form's face: \"60 kg/m2\"", "60 kg/m2",
     "common practice, no source: weigh a panel"},
    {"rise-limit", "the form designer's greatest rate: \"1.8 m/h\"", "", "", true},
    {"rise", "wished while a lift is placed", "1.5 m/h", "our own choice"},
    {"lift", "deepest", "500 mm", "ACI 309R, about 20 in (from memory)"},
    {"sides", "that rows hang on: near or both", "near up to 300 mm thick, else both",
     "a trade leaflet puts form vibration from one side at sections under about 300 mm"},
    {"unit-weight", "of the concrete", "25 kN/m3", "the weight DIN 18218 is drawn up for"},
    {"slump", "of the concrete", "120 mm", "assumed: give the mix's own"},
    {"cement", said("Use plain, retarded, blended, blended-retarded or high-blend"), "retarded",
     "conservative: a plasticizer that delays setting counts as retarding"},
    {"reference", "temperature the initial set was found at", "20 C", kAssumed},
    {"temp", "of the concrete as it will come", "20 C",
     "assumed: colder presses harder, warmer sets sooner"},
    {"method", "of form pressure: aci347, ciria108 or din18218", "aci347", "our own choice"},
    {"reach-x", "half-width a motor works over", "600 mm",
     "half of 4 ft, the closest spacing ACI 309R gives (from memory): try it on your form"},
    {"reach-z", "half-height a motor works over", "600 mm",
     "taken as along the form: try it on your form"},
    {"reach-pressure", "below a row that runs concrete presses as liquid: \"1.2 m\"", "",
     "without it twice reach-z, our own choice", true},
    {"speed", "of the motors", "6000 vpm", "common practice, no source"},
    {"volts", "of the inverters, between phases", "42 V", "common practice, no source"},
    {"inverter-amps", "an inverter gives in each phase: \"40 A\"", "", "", true},
    {"cord-section", "of a motor's cord: \"4 mm2\"", "", "", true},
    {"cord-length", "of a motor's cord: \"25 m\"", "", "", true},
    {"motors", "at hand, a whole number", "", "", true},
    {"crew", "hands that hang motors, or hold a deck's vibrators, a whole number", "2",
     "our own choice"},
    {"hang-time", "one of them takes a motor down and hangs it again", "5 min",
     "our own guess: time it on the first row"},
    {"load", "a truck brings", "6 m3", "common practice, no source"},
    {"trucks", "that can come: \"4 /h\"", "", "", true},
    {"haul", "from batching until discharge begins", "30 min", "assumed: ask the plant"},
    {"load-age", "from batching until a load must be out", "90 min",
     "ASTM C94 before its 2021 edition (read)"},
    {"dose-min", "seconds a row runs for a lift, at least", "90 s", "common practice, no source"},
    {"dose-max", "seconds a row runs for a lift, at most", "120 s", "common practice, no source"},
    {"units", "the pour's screens show: si or us", "si", "our own choice"},
    {"site", "its name", "", "", true},
    {"name", "of the pour", "", "", true},
    {"pour", "its id in the book", "PLANNED-1", kAssumed},
    {"by", "id of who plans", "foreman", kAssumed},
};

bool is_utf8(const std::string& text) {
  try {
    (void)nlohmann::json(text).dump();
    return true;
  } catch (const nlohmann::json::exception&) {
    return false;
  }
}

// What a deck has no use for: it has no rows, and its form bears no pressure to speak of.
bool of_rows(const PlanInput& input) {
  static constexpr std::array kOfRows{"rating", "force",     "amps",     "form-mass", "rise",
                                      "sides",  "method",    "reach-x",  "reach-z",   "speed",
                                      "volts",  "hang-time", "dose-min", "dose-max"};
  return std::any_of(kOfRows.begin(), kOfRows.end(),
                     [&](std::string_view name) { return name == input.name; });
}

class Texts {
 public:
  Texts(const PlanTexts& given, std::vector<const PlanInput*>& taken) {
    const auto kind = given.find("kind");
    const bool deck = kind != given.end() && kind->second == "deck";
    for (const PlanInput& input : kInputs) {
      const auto found = given.find(input.name);
      std::string text = found == given.end() ? std::string{} : found->second;
      if (text.empty() && *input.fallback != '\0') {
        text = input.fallback;
        if (!deck || !of_rows(input)) taken.push_back(&input);
      }
      if (text.empty() && !input.optional && !(deck && of_rows(input)) && !fault_) {
        fault_ = Error{Error::Kind::input,
                       option(input.name),
                       said("is missing"),
                       {said("Give {what}"), {{"what", input.what}}}};
      }
      if (!is_utf8(text) && !fault_) {
        fault_ = Error{Error::Kind::input, option(input.name), said("is not UTF-8 text"),
                       said("Type it anew")};
      }
      texts_.emplace(input.name, std::move(text));
    }
  }
  static std::string option(const char* name) { return std::string{"--"} + name; }
  const std::string& operator[](const char* name) const { return texts_.at(name); }
  [[nodiscard]] bool has(const char* name) const { return !texts_.at(name).empty(); }
  [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

 private:
  std::map<std::string, std::string> texts_;
  std::optional<Error> fault_;
};

// Reads option after option; the first that is wrong is kept.
class InputReader {
 public:
  explicit InputReader(const Texts& texts) : texts_(texts) {}

  template <class T>
  T get(const char* name, Result<T> (*read)(const std::string&, const std::string&)) {
    return reading_.get(read(Texts::option(name), texts_[name]));
  }
  template <class T>
  std::optional<T> maybe(const char* name,
                         Result<T> (*read)(const std::string&, const std::string&)) {
    return texts_.has(name) ? std::optional<T>{get(name, read)} : std::nullopt;
  }
  template <class T>
  T choose(const char* name, std::optional<T> (*parse)(std::string_view), Said use) {
    return reading_.choose(Texts::option(name).c_str(), parse(texts_[name]), texts_[name], use);
  }
  [[nodiscard]] const std::optional<Error>& error() const { return reading_.error(); }

 private:
  const Texts& texts_;
  OptionReading reading_;
};

std::optional<ElementKind> parse_kind(std::string_view text) {
  if (text == "wall") return ElementKind::wall;
  if (text == "column") return ElementKind::column;
  if (text == "deck") return ElementKind::deck;
  return std::nullopt;
}
std::optional<Units> parse_units(std::string_view text) {
  if (text == "si") return Units::si;
  if (text == "us") return Units::us;
  return std::nullopt;
}
std::optional<bool> parse_sides(std::string_view text) {
  if (text == "near") return false;
  if (text == "both") return true;
  return std::nullopt;
}

std::optional<trade::Section> parse_section(std::string_view text) {
  if (text == "rect") return trade::Section::rect;
  if (text == "round") return trade::Section::round;
  return std::nullopt;
}

std::vector<std::string> parted(const std::string& text, char at) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == at) {
      parts.emplace_back();
    } else if (c != ' ' || !parts.back().empty()) {
      parts.back() += c;
    }
  }
  for (std::string& part : parts) part.erase(part.find_last_not_of(' ') + 1);
  return parts;
}

Result<std::vector<Length>> read_lengths(const std::string& option, const std::string& text) {
  std::vector<Length> lengths;
  for (const std::string& part : parted(text, ',')) {
    auto length = read_length(option, part);
    if (!length) return Failed{length.error()};
    lengths.push_back(*length);
  }
  return lengths;
}

Result<std::vector<Patch>> read_openings(const std::string& option, const std::string& text) {
  std::vector<Patch> openings;
  for (const std::string& part : parted(text, ';')) {
    const auto sides = read_lengths(option, part);
    if (!sides) return Failed{sides.error()};
    if (sides->size() != 4) {
      return fail(Error::Kind::input, option,
                  {said("\"{given}\" is not four lengths"), {{"given", part}}},
                  said("Give x, z, width and height of each opening, with ; between openings"));
    }
    openings.push_back({(*sides)[0], (*sides)[1], (*sides)[2], (*sides)[3]});
  }
  return openings;
}

Result<std::vector<Beam>> read_beams(const std::string& option, const std::string& text) {
  std::vector<Beam> beams;
  for (const std::string& part : parted(text, ';')) {
    const auto sides = read_lengths(option, part);
    if (!sides) return Failed{sides.error()};
    if (sides->size() != 2 && sides->size() != 3) {
      return fail(Error::Kind::input, option,
                  {said("\"{given}\" is neither two nor three lengths"), {{"given", part}}},
                  said("Give x, width and depth of a beam across, width and depth of one along, "
                       "with ; between beams"));
    }
    const std::size_t at = sides->size() - 2;
    beams.push_back(
        {at == 1 ? std::optional{sides->front()} : std::nullopt, (*sides)[at], (*sides)[at + 1]});
  }
  return beams;
}

// "4 deg"
Result<double> read_slope(const std::string& option, const std::string& text) {
  double degrees = 0;
  int taken = 0;
  if (std::sscanf(text.c_str(), "%lf deg%n", &degrees, &taken) == 1 &&
      taken == static_cast<int>(text.size()) && degrees >= 0 && degrees < 90) {
    return degrees;
  }
  return fail(Error::Kind::input, option, {said("is \"{given}\""), {{"given", text}}},
              said("Give degrees: \"4 deg\""));
}

template <class T>
Limit<T> given_limit(T value) {
  return {value, LimitFrom::plan};
}

}  // namespace

std::span<const PlanInput> plan_inputs() {
  return kInputs;
}

Result<PlanRequest> read_plan_request(const PlanTexts& given) {
  PlanRequest request;
  const Texts texts{given, request.taken};
  if (texts.fault()) return Failed{*texts.fault()};
  InputReader read{texts};
  PlanWish& w = request.wish;
  w.element = ElementId{texts["element"]};
  w.kind = read.choose("kind", parse_kind, said("Use wall, column or deck"));
  w.length = read.get("length", read_length);
  w.height = read.get("height", read_length);
  w.thickness = read.get("thickness", read_length);
  w.section = read.choose("section", parse_section, said("Use rect or round"));
  w.thickness_top = read.maybe("thickness-top", read_length);
  w.batter_deg = read.maybe("batter", read_slope).value_or(0);
  w.bay = read.get("bay", read_length);
  w.bays = read.maybe("bays", read_lengths).value_or(std::vector<Length>{});
  w.openings = read.maybe("openings", read_openings).value_or(std::vector<Patch>{});
  w.beams = read.maybe("beams", read_beams).value_or(std::vector<Beam>{});
  const bool rows = w.kind != ElementKind::deck;
  if (rows || texts.has("rating")) w.form_rating = read.get("rating", read_pressure);
  w.form_mass = read.get("form-mass", read_mass_per_area);
  w.rise_limit = read.maybe("rise-limit", read_rise);
  w.rise_wished = read.get("rise", read_rise);
  w.deepest_lift = read.get("lift", read_length);
  const bool sides_given = given.count("sides") > 0 && !given.at("sides").empty();
  w.both_sides = sides_given ? read.choose("sides", parse_sides, said("Use near or both"))
                             : w.thickness > kThinSection;
  const auto is_given = [&](const char* name) {
    const auto found = given.find(name);
    return found != given.end() && !found->second.empty();
  };
  w.given = {is_given("load"), is_given("lift"), is_given("sides"), is_given("rise")};
  w.mix.id = MixId{"MIX"};
  w.mix.unit_weight = read.get("unit-weight", read_unit_weight);
  w.mix.slump = read.get("slump", read_length);
  w.mix.initial_set = read.get("initial-set", read_time);
  w.mix.set_reference = read.get("reference", read_temperature);
  w.mix.cement = read.choose("cement", trade::parse_cement_class,
                             said("Use plain, retarded, blended, blended-retarded or high-blend"));
  w.concrete = read.get("temp", read_temperature);
  w.method =
      read.choose("method", trade::parse_pressure_method, said("Use aci347, ciria108 or din18218"));
  if (rows) {
    w.motor = {read.get("amps", read_current), read.get("force", read_force),
               read.get("speed", read_speed)};
  }
  w.reach_x = read.get("reach-x", read_length);
  w.reach_z = read.get("reach-z", read_length);
  w.reach_pressure = read.maybe("reach-pressure", read_length);
  if (const auto motors = read.maybe("motors", read_count)) {
    w.motors_at_hand = static_cast<std::size_t>(*motors);
  }
  w.volts = read.get("volts", read_volts);
  w.inverter_amps = read.maybe("inverter-amps", read_current);
  const auto section = read.maybe("cord-section", read_wire_section);
  const auto cord = read.maybe("cord-length", read_length);
  if (section && cord) w.cable = Cable{*section, *cord};
  w.load = read.get("load", read_volume);
  if (const auto trucks = read.maybe("trucks", read_per_hour)) w.trucks_per_hour = trucks->times;
  w.haul = read.get("haul", read_time);
  w.crew = read.get("crew", read_count);
  w.hang_time = read.get("hang-time", read_time);
  w.limits.load_age_max = given_limit(read.get("load-age", read_time));
  w.limits.dose_min = given_limit(read.get("dose-min", read_time));
  w.limits.dose_max = given_limit(read.get("dose-max", read_time));
  request.units = read.choose("units", parse_units, said("Use si or us"));
  request.site = texts["site"];
  request.name = texts["name"];
  request.pour = texts["pour"];
  request.by = texts["by"];
  if (read.error()) return Failed{*read.error()};
  if (section.has_value() != cord.has_value()) {
    return fail(Error::Kind::input, "--cord-section, --cord-length", said("one is missing"),
                said("Give both or neither"));
  }
  if (w.limits.dose_max.value < w.limits.dose_min.value) {
    return fail(Error::Kind::input, "--dose-max", said("is below --dose-min"),
                said("Give a longer time"));
  }
  return request;
}

}  // namespace rb
