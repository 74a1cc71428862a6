#include "trade/motors/power.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

const double kRoot3 = std::numbers::sqrt3;

Bound bound(Potential volts) {
  return {said("voltage"), in_volts(volts), 10.0, 1000.0, "V"};
}
Bound bound(Current current) {
  return {said("current"), in_amperes(current), 0.0, 1000.0, "A"};
}

}  // namespace

ApparentPower apparent_power(Potential between_lines, Current line) {
  return between_lines * line * kRoot3;
}

Current line_current(ApparentPower power, Potential between_lines) {
  return power / between_lines / kRoot3;
}

Result<InverterLoad> inverter_load(Potential volts, Current greatest,
                                   std::span<const Current> running) {
  if (auto fault = outside(
          said("inverter"),
          {bound(volts), {said("greatest current"), in_amperes(greatest), 0.1, 1000.0, "A"}})) {
    return Failed(*std::move(fault));
  }
  Current line = amperes(0.0);
  for (const Current& motor : running) {
    if (auto fault = outside(said("motor"), {bound(motor)})) return Failed(*std::move(fault));
    line += motor;
  }
  return InverterLoad{line, apparent_power(volts, line), line / greatest};
}

Result<double> generator_share(ApparentPower rating, std::span<const InverterLoad> loads) {
  if (auto fault = outside(said("generator"),
                           {{said("rating"), in_kilovoltamperes(rating), 0.1, 10000.0, "kVA"}})) {
    return Failed(*std::move(fault));
  }
  ApparentPower sum = kilovoltamperes(0.0);
  for (const InverterLoad& load : loads) sum += load.power;
  return sum / rating;
}

Potential three_phase_drop(Current line, Length length, ResistancePerLength resistance,
                           ResistancePerLength reactance, std::optional<PowerFactor> power_factor) {
  const double r = resistance.value();
  const double x = reactance.value();
  const double cosine = power_factor ? power_factor->cosine : 1.0;
  const double per_metre =
      power_factor ? r * cosine + x * std::sqrt(1.0 - cosine * cosine) : std::hypot(r, x);
  return line * (length * quantity_of<ResistancePerLength>(per_metre)) * kRoot3;
}

namespace {

std::optional<Error> out_of_bounds(Potential volts, Current line, const Feed& feed) {
  return outside(
      said("feed"),
      {bound(volts),
       bound(line),
       {said("cord length"), in_metres(feed.length), 0.0, 1000.0, "m"},
       {said("frequency"), in_hertz(feed.frequency), 0.0, 500.0, "Hz"},
       {said("reactance"), in_ohms_per_kilometre(feed.reactance_50hz), 0.0, 10.0, "ohm/km"},
       {said("power factor"), feed.power_factor ? feed.power_factor->cosine : 1.0, 0.0, 1.0, ""}});
}

}  // namespace

Result<VoltageDrop> drop_along(Potential volts, std::span<const Stretch> cords) {
  Potential lost{};
  for (const auto& [line, feed] : cords) {
    if (auto fault = out_of_bounds(volts, line, feed)) return Failed(*std::move(fault));
    const auto resistance =
        conductor_resistance(feed.conductor, feed.section, feed.conductor_temperature);
    if (!resistance) return Failed(resistance.error());
    lost +=
        three_phase_drop(line, feed.length, *resistance,
                         feed.reactance_50hz * (feed.frequency / hertz(50.0)), feed.power_factor);
  }
  if (lost >= volts) {
    return fail(Error::Kind::refused, said("feed"),
                {said("the cord would lose {lost} of {volts}"),
                 {{"lost", amount(lost)}, {"volts", amount(volts)}}},
                said("Take a thicker or a shorter cord, or run fewer motors on it"));
  }
  return VoltageDrop{lost, volts - lost, lost / volts};
}

Result<VoltageDrop> voltage_drop(Potential volts, Current line, const Feed& feed) {
  const Stretch cord{line, feed};
  return drop_along(volts, {&cord, 1});
}

}  // namespace rb::trade
