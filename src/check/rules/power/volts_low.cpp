// volts-low: too many volts lost in the cords to the motors.
#include "check/rule.h"

namespace rb {

namespace {

constexpr double kMostLost = 0.05;

const char* told_of(const PowerReport& power) {
  if (power.lost_all) {
    return power.trunk
               ? said(
                     "inverter {inverter}: the cords to a motor would lose all of {volts} with "
                     "{motors} motors on the trunk, limit {limit}, or have a section under the "
                     "least of the standard")
               : said(
                     "inverter {inverter}: the cord to a motor would lose all of {volts}, limit "
                     "{limit}, or has "
                     "a section under the least of the standard");
  }
  return power.trunk
             ? said(
                   "inverter {inverter}: {measured} of {volts} is lost on the way to a motor with "
                   "{motors} motors on the trunk, {amps} in all, limit {limit}")
             : said(
                   "inverter {inverter}: {measured} of {volts} is lost in the cord to a motor, "
                   "limit {limit}");
}

void look_volts_low(const Look& look, const Rule& rule, Findings& out) {
  for (const PowerReport& power : look.power) {
    if (!power.lost_all && (!power.lost || !over(*power.lost, kMostLost))) continue;
    const PowerReport::Most& most = power.trunk ? *power.trunk : power.all;
    Finding f = found(rule);
    f.inverter = look.plan().power[power.inverter].id;
    f.from = most.from;
    f.to = most.to;
    f.limit = share(kMostLost);
    if (power.lost) f.measured = share(*power.lost);
    f.sentence = told_of(power);
    f.facts = {{"volts", amount(power.volts)}};
    if (power.trunk) {
      f.facts.push_back({"motors", counted(most.motors)});
      if (power.lost) f.facts.push_back({"amps", amount(most.amps)});
    }
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kVoltsLow{
    {"volts-low", said("Voltage low at the motors"), Severity::mend, Cost::perhaps,
     "motors that run weak at the end of a long cord, or of a trunk too thin for all on it",
     said("conductor resistance by IEC 60228; 5 % is common practice, no source"),
     "5 % of the inverter's volts from the inverter to a motor", "nobody",
     said("Shorten the cord or take a thicker one; a licensed electrician decides")},
    look_volts_low};

}  // namespace rb
