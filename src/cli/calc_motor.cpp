// `calc force|volts|amps`: what a motor gives, and what it takes.
#include <fmt/format.h>

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
  if (read.error()) return report(*read.error());
  if (const auto many = trade::outside(
          said("calc amps"), {{Said{"--motors"}, static_cast<double>(motors), 1, 1000, ""},
                              {Said{"--inverters"}, static_cast<double>(inverters), 1, 100, ""}})) {
    return report(*many);
  }
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
    say("share of the generator", fmt::format("{:.0f} %, {} alike", *share * 100, inverters));
    over = over || *share > 1;
  }
  if (over) fmt::print("Overload: run fewer motors at once.\n");
  caution("a licensed electrician");
  return over ? Exit::findings : Exit::fine;
}

}  // namespace rb
