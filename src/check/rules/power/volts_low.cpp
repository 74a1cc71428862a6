// volts-low: too many volts lost in the cords to the motors.
#include "check/inverter_look.h"
#include "trade/motors/power.h"

namespace rb {

namespace {

constexpr double kMostLost = 0.05;

// As it was set last by then; the plan's until somebody said.
Potential volts_at(const Look& look, std::size_t inverter, Seconds at) {
  Potential volts = look.plan().power[inverter].volts;
  for (const SpeedState& set : look.state.speeds) {
    if (set.at > at) break;
    if (set.inverter == inverter && set.what.volts) volts = *set.what.volts;
  }
  return volts;
}

void look_volts_low(const Look& look, const Rule& rule, Findings& out) {
  for (const InverterMoment& moment : busiest(look)) {
    const Inverter& inverter = look.plan().power[moment.inverter];
    if (!inverter.cable || !look.plan().motor_type) continue;
    trade::Feed feed;
    feed.section = inverter.cable->section;
    feed.length = inverter.cable->length;
    feed.frequency = look.plan().motor_type->top_speed;
    const Potential volts = volts_at(look, moment.inverter, moment.from);
    const auto drop = trade::voltage_drop(volts, look.plan().motor_type->amps, feed);
    if (drop && !over(drop->share, kMostLost)) continue;
    Finding f = found(rule);
    f.inverter = inverter.id;
    f.from = moment.from;
    f.to = moment.to;
    f.limit = share(kMostLost);
    if (drop) {
      f.measured = share(drop->share);
      f.sentence = said(
          "inverter {inverter}: {measured} of {volts} is lost in the cord to a motor, limit "
          "{limit}");
      f.facts = {{"volts", amount(volts)}};
    } else {
      f.sentence = said(
          "inverter {inverter}: the cord to a motor would lose all of {volts}, limit {limit}, or "
          "has "
          "a section under the least of the standard");
      f.facts = {{"volts", amount(volts)}};
    }
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kVoltsLow{
    {"volts-low", said("Voltage low at the motors"), Severity::mend, Cost::perhaps,
     "motors that run weak at the end of a long cord",
     said("conductor resistance by IEC 60228; 5 % is common practice, no source"),
     "5 % of the inverter's volts from the inverter to a motor", "nobody",
     said("Shorten the cord or take a thicker one; a licensed electrician decides")},
    look_volts_low};

}  // namespace rb
