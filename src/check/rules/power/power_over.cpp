// power-over: more motors ran on an inverter than it can feed.
#include "check/rule.h"

namespace rb {

namespace {

void look_power_over(const Look& look, const Rule& rule, Findings& out) {
  for (const PowerReport& power : look.power) {
    const Inverter& inverter = look.plan().power[power.inverter];
    if (power.all.amps <= inverter.max_amps * (1 + 1e-9)) continue;
    Finding f = found(rule);
    f.inverter = inverter.id;
    f.from = power.all.from;
    f.to = power.all.to;
    f.measured = amount(power.all.amps);
    f.limit = amount(inverter.max_amps);
    f.sentence = said(
        "inverter {inverter}: {motors} motors together draw {measured} a phase; it gives {limit}");
    f.facts = {{"motors", counted(power.all.motors)}};
    if (inverter.internal) {
      f.sentence = said(
          "inverter {inverter}: {motors} motors and {heads} internal vibrators together draw "
          "{measured} a phase; it gives {limit} (the internal ones are counted while any row runs "
          "on it: a choice of this project)");
      f.facts.push_back({"heads", count(inverter.internal->heads)});
    }
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
