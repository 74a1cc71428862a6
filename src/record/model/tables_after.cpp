// The tables of what comes after the last lift.
#include "record/model/columns.h"

namespace rb::columns {

// In MPa, whatever other pressures stand in.
static Cell megapascals_of(const std::optional<Pressure>& strength) {
  return strength ? Cell{in_megapascals(*strength)} : Cell{};
}

Table cures(const PourRecord& p) {
  using L = CureLine;
  return table<L>("curing", "Curing", p.cures,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"from", "From", M::moment, of(&L::from)},
                   {"to", "To", M::moment, of(&L::to)},
                   {"how", "How", M::text, of(&L::how)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table concrete_temps(const PourRecord& p) {
  using L = ConcreteTempLine;
  return table<L>("concrete_temps", "Temperature of the hardening concrete", p.concrete_temps,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"element", "Element", M::text, of(&L::element)},
                   {"z", "Up from base", M::length, of(&L::z)},
                   {"x", "From left", M::length, of(&L::x)},
                   {"temp", "Concrete", M::temperature, of(&L::temp)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table maturities(const PourRecord& p) {
  using L = MaturityLine;
  return table<L>(
      "maturity", "Maturity since the last concrete", p.maturities,
      {{"element", "Element", M::text, of(&L::element)},
       {"z", "Up from base", M::length, of(&L::z)},
       {"x", "From left", M::length, of(&L::x)},
       {"readings", "Readings", M::count, of(&L::readings)},
       {"from", "From", M::moment, of(&L::from)},
       {"to", "To", M::moment, of(&L::to)},
       {"equivalent_age", "Age at 20 °C, the least", M::long_span, of(&L::equivalent_age)},
       {"nurse_saul", "Nurse-Saul over 0 °C (°C h)", M::number, of(&L::nurse_saul)},
       {"strength", "Strength by the plan's curve", M::strength,
        [](const L& l) { return megapascals_of(l.strength); }}});
}

Table permits(const PourRecord& p) {
  using L = PermitLine;
  return table<L>("permits", "Leave to strip", p.permits,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"element", "Element", M::text, of(&L::element)},
                   {"side", "Side", M::text, of(&L::side)},
                   {"why", "Why", M::text, of(&L::why)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table specimens(const PourRecord& p) {
  using L = SpecimenLine;
  return table<L>(
      "specimens", "Specimens", p.specimens,
      {{"ticket", "Ticket", M::text, of(&L::ticket)},
       {"specimen", "Specimen", M::text, of(&L::specimen)},
       {"taken", "Taken", M::moment, of(&L::taken)},
       {"broken", "Broken", M::moment, of(&L::broken)},
       {"age", "Age", M::any_span, of(&L::age)},
       {"strength", "Strength", M::strength, [](const L& l) { return megapascals_of(l.strength); }},
       {"by", "By", M::text, of(&L::by)}});
}

}  // namespace rb::columns
