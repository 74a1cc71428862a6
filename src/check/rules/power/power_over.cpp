// power-over: more motors ran on an inverter than it can feed.
#include "check/inverter_look.h"

namespace rb {

namespace {

void look_power_over(const Look& look, const Rule& rule, Findings& out) {
  for (const InverterMoment& moment : busiest(look)) {
    const Inverter& inverter = look.plan().power[moment.inverter];
    const Current amps = drawn(look.plan(), moment.motors);
    if (amps <= inverter.max_amps * (1 + 1e-9)) continue;
    Finding f = found(rule);
    f.inverter = inverter.id;
    f.from = moment.from;
    f.to = moment.to;
    f.measured = amount(amps);
    f.limit = amount(inverter.max_amps);
    f.sentence = said(
        "inverter {inverter}: {motors} motors together draw {measured} a phase; it gives {limit}");
    f.facts = {{"motors", count(static_cast<double>(moment.motors))}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kPowerOver{
    {"power-over", said("Inverter overloaded"), Severity::mend, Cost::perhaps,
     "an inverter that trips in the middle of a lift, cords that overheat",
     said("the plan's ratings; currents added as if in phase"), "max_amps of the inverter",
     "plan, by a licensed electrician",
     said("Run fewer rows at once on it; have a licensed electrician look at the feed")},
    look_power_over};

}  // namespace rb
