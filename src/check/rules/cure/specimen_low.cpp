// specimen-low: a specimen of 28 days or more broke below the strength specified for its mix.
#include "check/rule.h"

namespace rb {

namespace {

constexpr double kSpecifiedAt = 28;  // days

void look_specimen_low(const Look& look, const Rule& rule, Findings& out) {
  for (const SpecimenState& specimen : look.state.specimens) {
    const auto& mixes = look.plan().mixes;
    const Mix* mix = mixes.size() == 1 ? &mixes.front() : mix_of(look.state, specimen.ticket);
    if (mix == nullptr || !mix->strength || specimen.what.age_days < kSpecifiedAt) continue;
    if (!under(specimen.what.strength, *mix->strength)) continue;
    Finding f = found(rule);
    f.ticket = specimen.ticket;
    const auto truck = truck_of(look.state, specimen.ticket);
    if (truck) f.element = look.state.trucks[*truck].element();
    f.from = f.to = specimen.at;
    f.measured = Amount{Measure::strength, in_megapascals(specimen.what.strength)};
    f.limit = Amount{Measure::strength, in_megapascals(*mix->strength)};
    f.source = {.code = Source::Code::plan, .field = "strength_mpa"};
    f.ref = specimen.ref;
    f.sentence = said(
        "ticket {ticket}: specimen {specimen} broke at {measured} after {days} days; mix {mix} is "
        "to reach {limit}");
    f.facts = {{"specimen", specimen.what.specimen.text},
               {"days", Amount{Measure::number, specimen.what.age_days}},
               {"mix", mix->id.text}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kSpecimenLow{
    {"specimen-low", said("Specimen below strength"), Severity::mend, Cost::lasting,
     "concrete weaker than the structure was reckoned with",
     said("the plan's; every single result is held to it (our own choice, harder than the averages "
          "of ACI 318, from memory)"),
     "strength_mpa of the mix, from 28 days on; none by default", "plan, by the engineer",
     said("Tell the engineer: nothing is loaded on it until it is decided what the result means")},
    look_specimen_low};

}  // namespace rb
