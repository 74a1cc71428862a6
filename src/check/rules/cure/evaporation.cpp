// evaporation: a slab dried faster than its concrete bleeds before anything shielded it.
#include "check/rule.h"
#include "pour/outlook/drying.h"

namespace rb {

namespace {

void look_evaporation(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    const auto drying = fastest_drying(look.state, e, look.asked.at);
    if (!drying || !over(drying->rate.kg_m2_h, trade::kCracks.kg_m2_h)) continue;
    Finding f = found(rule);
    f.element = e;
    f.from = f.to = drying->at;
    f.measured = Amount{Measure::evaporation, drying->rate.kg_m2_h};
    f.limit = Amount{Measure::evaporation, trade::kCracks.kg_m2_h};
    f.sentence = said(
        "{element}: with no curing begun its surface dried at {measured} (concrete {concrete}, air "
        "{air}, humidity {humidity}, wind {wind}); cracks are to be expected over {limit}");
    f.facts = {{"concrete", amount(drying->concrete)},
               {"air", amount(drying->air)},
               {"humidity", Amount{Measure::percent, drying->humidity}},
               {"wind", Amount{Measure::wind, in_metres_per_second(drying->wind)}}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kEvaporation{
    {"evaporation", said("Dries too fast"), Severity::mend, Cost::lasting,
     "cracks of plastic concrete that dries faster than it bleeds",
     said("ACI 305R (from memory): the evaporation of Menzel's formula over {1 kg/m2/h}"),
     "{1 kg/m2/h} on a slab before its curing has begun", "nobody",
     said("Fog, shade, break the wind or cover the slab now, and log the curing")},
    look_evaporation};

}  // namespace rb
