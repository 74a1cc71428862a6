// `calc force|volts|amps`: what a motor gives, and what it takes.
#include <fmt/format.h>

#include <optional>
#include <utility>
#include <vector>

#include "cli/calc.h"
#include "cli/say_both.h"
#include "cli/unit_input.h"
#include "trade/motors/force.h"
#include "trade/motors/power.h"
#include "trade/shape/bounds.h"

namespace rb {

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

namespace {

// What a motor's feed rests on that nobody is asked for.
void tell_cord_defaults(const trade::Feed& feed) {
  default_taken("conductor", "flexible copper, class 5 of IEC 60228");
  default_taken("conductor temperature", both(feed.conductor_temperature));
  default_taken("reactance", fmt::format("{:.2f} ohm/km at 50 Hz",
                                         trade::in_ohms_per_kilometre(feed.reactance_50hz)));
  default_taken("power factor", "the one at which most is lost");
}

// A cord is given whole or not at all.
std::optional<trade::Feed> read_cord(OptionReading& read, const char* section,
                                     const std::string& mm2, const char* length,
                                     const std::string& metres) {
  if (mm2.empty() && metres.empty()) return std::nullopt;
  trade::Feed feed;
  feed.section = read.get(read_wire_section(section, mm2));
  feed.length = read.get(read_length(length, metres));
  return feed;
}

}  // namespace

Exit calc_volts(const VoltsWish& wish) {
  OptionReading read;
  const Potential volts_given = read.get(read_volts("--volts", wish.volts));
  const Current amps = read.get(read_current("--amps", wish.amps));
  const Frequency speed = read.get(read_speed("--speed", wish.speed));
  const int motors = read.get(read_count("--motors", wish.motors));
  auto trunk =
      read_cord(read, "--trunk-section", wish.trunk_section, "--trunk-length", wish.trunk_length);
  auto own = read_cord(read, "--section", wish.section, "--length", wish.length);
  if (read.error()) return report(*read.error());
  if (!trunk && !own) {
    return report({Error::Kind::input, said("calc volts"), said("no cord is given"),
                   said("Give --section and --length, --trunk-section and --trunk-length, or "
                        "both")});
  }
  if (!trunk && motors > 1) {
    return report({Error::Kind::input, "--motors", said("is given without a trunk"),
                   said("Give --trunk-section and --trunk-length: what several motors share")});
  }
  std::vector<trade::Stretch> cords;
  for (const auto& [cord, through] :
       {std::pair{trunk, amps * static_cast<double>(motors)}, std::pair{own, amps}}) {
    if (!cord) continue;
    cords.push_back({through, *cord});
    cords.back().feed.frequency = speed;
  }
  const auto drop = trade::drop_along(volts_given, cords);
  if (!drop) return report(drop.error());
  if (trunk) say("amps through the trunk", fmt::format("{:.1f} A", in_amperes(amps) * motors));
  say(trunk ? "volts lost on the way to a motor" : "volts lost in the cord",
      fmt::format("{:.2f} V  ({:.1f} %)", in_volts(drop->lost), drop->share * 100.0));
  say("volts at the motor", fmt::format("{:.2f} V", in_volts(drop->at_motor)));
  tell_cord_defaults(cords.front().feed);
  caution("a licensed electrician");
  return Exit::fine;
}

Exit calc_amps(const AmpsWish& wish) {
  OptionReading read;
  const int motors = read.get(read_count("--motors", wish.motors));
  const Current amps = read.get(read_current("--amps", wish.amps));
  const Current greatest = read.get(read_current("--inverter", wish.inverter));
  const Potential volts_given = read.get(read_volts("--volts", wish.volts));
  const int inverters = read.get(read_count("--inverters", wish.inverters));
  std::optional<trade::ApparentPower> generator;
  if (!wish.generator.empty()) {
    generator = read.get(read_apparent_power("--generator", wish.generator));
  }
  const double derate = read.get(read_share("--derate", wish.derate));
  if (read.error()) return report(*read.error());
  if (const auto many = trade::outside(
          said("calc amps"), {{Said{"--motors"}, static_cast<double>(motors), 1, 1000, ""},
                              {Said{"--inverters"}, static_cast<double>(inverters), 1, 100, ""},
                              {Said{"--derate"}, derate * 100, 1, 100, "%"}})) {
    return report(*many);
  }
  if (generator) *generator *= derate;
  const std::vector<Current> running(static_cast<std::size_t>(motors), amps);
  const auto load = trade::inverter_load(volts_given, greatest, running);
  if (!load) return report(load.error());
  say("amps in each phase", fmt::format("{:.1f} A", in_amperes(load->line)));
  say("power", fmt::format("{:.2f} kVA", trade::in_kilovoltamperes(load->power)));
  say("share of the inverter", fmt::format("{:.0f} %", load->share * 100));
  bool over = load->share > 1;
  if (generator) {
    const std::vector<trade::InverterLoad> loads(static_cast<std::size_t>(inverters), *load);
    const auto share = trade::generator_share(*generator, loads);
    if (!share) return report(share.error());
    say("the generator gives", fmt::format("{:.2f} kVA", trade::in_kilovoltamperes(*generator)));
    say("share of that", fmt::format("{:.0f} %, {} alike", *share * 100, inverters));
    over = over || *share > 1;
  }
  if (generator) fmt::print("A derating of 80 % where none is known: our own choice.\n");
  if (over) fmt::print("Overload: run fewer motors at once.\n");
  caution("a licensed electrician");
  return over ? Exit::findings : Exit::fine;
}

}  // namespace rb
