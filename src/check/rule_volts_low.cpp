// volts-low: too many volts lost in the cords to the motors.
#include <fmt/format.h>

#include "check/inverter_look.h"
#include "trade/power.h"

namespace rb {

namespace {

constexpr double kMostLost = 0.05;

void look_volts_low(const Look& look, const Rule& rule, Findings& out) {
  for (const InverterMoment& moment : busiest(look)) {
    const Inverter& inverter = look.plan().power[moment.inverter];
    if (!inverter.cable || !look.plan().motor_type) continue;
    trade::Feed feed;
    feed.section = inverter.cable->section;
    feed.length = inverter.cable->length;
    feed.frequency = look.plan().motor_type->top_speed;
    const auto drop = trade::voltage_drop(inverter.volts, look.plan().motor_type->amps, feed);
    if (drop && !over(drop->share, kMostLost)) continue;
    Finding f = found(rule);
    f.inverter = inverter.id;
    f.from = moment.from;
    f.to = moment.to;
    f.limit = kMostLost;
    f.unit = "1";
    if (drop) {
      f.measured = drop->share;
      f.says = fmt::format(
          "inverter {}: {:.1f} % of {:g} V is lost in the cord to a motor, limit {:.0f} %",
          inverter.id.text, drop->share * 100, in_volts(inverter.volts), kMostLost * 100);
    } else {
      f.says = fmt::format("inverter {}: {}", inverter.id.text, to_text(drop.error()));
    }
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kVoltsLow{{"volts-low", Weight::mend, "motors that run weak at the end of a long cord",
                      "conductor resistance by IEC 60228; 5 % is common practice, no source",
                      "5 % of the inverter's volts from the inverter to a motor", "nobody",
                      "Shorten the cord or take a thicker one; a licensed electrician decides"},
                     look_volts_low};

}  // namespace rb
