// cure-temp: the hardening concrete was read below freezing while it was weak, or too hot.
#include "check/rule.h"
#include "pour/outlook/hardening.h"

namespace rb {

namespace {

constexpr Celsius kFreezes = celsius(0);
constexpr Celsius kTooHot = celsius(70);
constexpr Pressure kBearsFrost = megapascals(3.5);
constexpr Seconds kShieldedFor = seconds(2.0 * 86400);

// Until the strength that bears frost is shown; where nothing can show any, for two days.
bool weak(const PourState& state, std::size_t element, Seconds came, Seconds at) {
  if (!strength_judged(state, element, at)) return at - came <= kShieldedFor;
  const auto shown = strength_shown(state, element, at).counts();
  return !shown || under(*shown, kBearsFrost);
}

Finding out_of(const Rule& rule, const ConcreteTempState& reading, Celsius limit,
               const char* says) {
  Finding f = found(rule);
  f.element = reading.element;
  f.from = f.to = reading.at;
  f.measured = amount(reading.what.temp);
  f.limit = amount(limit);
  f.ref = reading.ref;
  f.sentence = says;
  return f;
}

// Of each element the worst reading of either kind.
void look_cure_temp(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    const auto came = last_concrete(look.state, e);
    if (!came) continue;
    const ConcreteTempState* cold = nullptr;
    const ConcreteTempState* hot = nullptr;
    for (const ConcreteTempState& reading : look.state.concrete_temps) {
      if (reading.element != e || reading.at > look.asked.at) continue;
      const Celsius temp = reading.what.temp;
      if (temp > kTooHot && (hot == nullptr || temp > hot->what.temp)) hot = &reading;
      if (temp < kFreezes && (cold == nullptr || temp < cold->what.temp) &&
          weak(look.state, e, *came, reading.at)) {
        cold = &reading;
      }
    }
    if (cold != nullptr) {
      out.push_back(out_of(rule, *cold, kFreezes,
                           said("{element}: its concrete was read at {measured} before it was "
                                "strong enough to freeze; not under {limit}")));
    }
    if (hot != nullptr) {
      out.push_back(out_of(rule, *hot, kTooHot,
                           said("{element}: its hardening concrete was read at {measured}; not "
                                "over {limit}")));
    }
  }
}

}  // namespace

extern const Rule kCureTemp{
    {"cure-temp", said("Hardening concrete too cold or too hot"), Severity::mend, Cost::lasting,
     "concrete that freezes before it bears it, or gets so hot that it cracks or swells later",
     said(
         "ACI 306R (no frost before {3.5 MPa} are shown; two days where nothing shows any) and ACI "
         "301 (at most {70 degC}), both from memory"),
     "0 degC until 3.5 MPa are shown, or for two days where nothing can show any; 70 degC at any "
     "time; by temperatures read in the concrete",
     "nobody", said("Cover, heat or cool it now, go on reading, and tell the engineer")},
    look_cure_temp};

}  // namespace rb
