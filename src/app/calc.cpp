#include "app/calc.h"

#include <fmt/format.h>

#include "app/say_both.h"
#include "app/unit_input.h"
#include "trade/force.h"
#include "trade/power.h"
#include "trade/pressure.h"
#include "trade/setting.h"

namespace rb {

Exit calc_pressure(const PressureWish& wish) {
  OptionReading read;
  const auto method = read.choose("--method", trade::parse_pressure_method(wish.method),
                                  wish.method, "aci347, ciria108 or din18218");
  trade::PressureCase c;
  c.shape =
      read.choose("--shape", trade::parse_form_shape(wish.shape), wish.shape, "wall or column");
  c.cement = read.choose("--cement", trade::parse_cement_class(wish.cement), wish.cement,
                         "plain, retarded, blended, blended-retarded or high-blend");
  c.unit_weight = read.get(read_unit_weight("--unit-weight", wish.unit_weight));
  c.form_height = c.pour_height = read.get(read_length("--height", wish.height));
  c.temperature = read.get(read_temperature("--temp", wish.temperature));
  c.slump = read.get(read_length("--slump", wish.slump));
  c.set_time = read.get(read_time("--set-time", wish.set_time));
  c.external_vibration = true;
  const Velocity rise = read.get(read_rise("--rise", wish.rise));
  std::optional<Pressure> rating;
  if (!wish.rating.empty()) rating = read.get(read_pressure("--rating", wish.rating));
  if (read.error()) return report(*read.error());

  const Pressure liquid = trade::full_liquid_head(c.unit_weight, c.pour_height);
  const auto pressure = trade::method_pressure(method, c, rise);
  if (pressure) {
    say("greatest lateral pressure", both(*pressure));
    say("reached at a depth of", both(trade::liquid_depth(c.unit_weight, *pressure)));
  } else if (pressure.error().kind == Error::Kind::refused) {
    say("the method does not hold", to_text(pressure.error()));
  } else {
    return report(pressure.error());
  }
  say("full liquid head", both(liquid));
  if (rating) {
    const auto allowed = trade::rise_for_rating(method, c, *rating);
    if (!allowed) {
      say("rise at the rating", to_text(allowed.error()));
    } else {
      say("rise at the rating", *allowed ? both(**allowed) : "any: it bears the full liquid head");
    }
  }
  if (const auto words = trade::vibration_caution(method, c)) fmt::print("{}\n", *words);
  caution("the form designer");
  return Exit::fine;
}

Exit calc_set(const SetWish& wish) {
  OptionReading read;
  const Seconds initial = read.get(read_time("--initial-set", wish.initial_set));
  const Celsius reference = read.get(read_temperature("--reference", wish.reference));
  const Celsius temperature = read.get(read_temperature("--temp", wish.temperature));
  if (read.error()) return report(*read.error());
  const trade::SettingRate rate{reference, {}};
  const auto time = trade::time_to_reach(initial, temperature, rate);
  if (!time) return report(time.error());
  say("rate against the reference", fmt::format("{:.4f}", trade::rate_factor(temperature, rate)));
  say("time to initial set", fmt::format("{:.2f} h", in_hours(*time)));
  fmt::print("Equivalent age (ASTM C1074), Q = 5000 K from memory. The mix's own test decides.\n");
  return Exit::fine;
}

Exit calc_force(const ForceWish& wish) {
  OptionReading read;
  const Mass eccentric = read.get(read_mass("--eccentric", wish.eccentric));
  const Length radius = read.get(read_length("--radius", wish.radius));
  const Frequency speed = read.get(read_speed("--speed", wish.speed));
  std::optional<Mass> form;
  std::optional<Mass> concrete;
  if (!wish.form.empty()) form = read.get(read_mass("--form", wish.form));
  if (!wish.concrete.empty()) concrete = read.get(read_mass("--concrete", wish.concrete));
  if (read.error()) return report(*read.error());
  const auto force = trade::centrifugal_force(eccentric, radius, speed);
  if (!force) return report(force.error());
  say("centrifugal force", both(*force));
  if (form && concrete) {
    const auto needed = trade::force_needed(*form, *concrete);
    if (!needed) return report(needed.error());
    say("force needed in reach", both(*needed));
    say("share of it given", fmt::format("{:.0f} %", *force / *needed * 100.0));
    fmt::print("Sizing 0.5 (form + 0.2 concrete): from memory of ACI 309R.\n");
  }
  caution("the motor's maker");
  return Exit::fine;
}

Exit calc_volts(const VoltsWish& wish) {
  OptionReading read;
  const Potential volts_given = read.get(read_volts("--volts", wish.volts));
  const Current amps = read.get(read_current("--amps", wish.amps));
  trade::Feed feed;
  feed.section = read.get(read_wire_section("--section", wish.section));
  feed.length = read.get(read_length("--length", wish.length));
  feed.frequency = read.get(read_speed("--speed", wish.speed));
  if (read.error()) return report(*read.error());
  const auto drop = trade::voltage_drop(volts_given, amps, feed);
  if (!drop) return report(drop.error());
  say("volts lost in the cord",
      fmt::format("{:.2f} V  ({:.1f} %)", in_volts(drop->lost), drop->share * 100.0));
  say("volts at the motor", fmt::format("{:.2f} V", in_volts(drop->at_motor)));
  caution("a licensed electrician");
  return Exit::fine;
}

}  // namespace rb
