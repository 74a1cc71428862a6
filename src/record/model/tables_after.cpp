// The tables of what comes after the last lift.
#include "record/model/columns.h"

namespace rb::columns {

// In MPa, whatever other pressures stand in.
static Cell megapascals_of(const std::optional<Pressure>& strength) {
  return strength ? Cell{in_megapascals(*strength)} : Cell{};
}

Table cures(const PourRecord& p) {
  using L = CureLine;
  return table<L>("curing", said("Curing"), p.cures,
                  {{"element", said("Element"), M::text, of(&L::element)},
                   {"from", said("From"), M::moment, of(&L::from)},
                   {"to", said("To"), M::moment, of(&L::to)},
                   {"how", said("How"), M::text, of(&L::how), On::both, kWord},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table concrete_temps(const PourRecord& p) {
  using L = ConcreteTempLine;
  return table<L>("concrete_temps", said("Temperature of the hardening concrete"), p.concrete_temps,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"element", said("Element"), M::text, of(&L::element)},
                   {"z", said("Up from base"), M::length, of(&L::z)},
                   {"x", said("From left"), M::length, of(&L::x)},
                   {"temp", said("Concrete"), M::temperature, of(&L::temp)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table maturities(const PourRecord& p) {
  using L = MaturityLine;
  return table<L>(
      "maturity", said("Maturity since the last concrete"), p.maturities,
      {{"element", said("Element"), M::text, of(&L::element)},
       {"z", said("Up from base"), M::length, of(&L::z)},
       {"x", said("From left"), M::length, of(&L::x)},
       {"readings", said("Readings"), M::count, of(&L::readings)},
       {"from", said("From"), M::moment, of(&L::from)},
       {"to", said("To"), M::moment, of(&L::to)},
       {"equivalent_age", said("Age at 20 °C, the least"), M::long_span, of(&L::equivalent_age)},
       {"nurse_saul", said("Nurse-Saul over 0 °C (°C h)"), M::number, of(&L::nurse_saul)},
       {"strength", said("Strength by the plan's curve"), M::strength,
        [](const L& l) { return megapascals_of(l.strength); }}});
}

Table permits(const PourRecord& p) {
  using L = PermitLine;
  return table<L>("permits", said("Leave to strip"), p.permits,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"element", said("Element"), M::text, of(&L::element)},
                   {"side", said("Side"), M::text, of(&L::side), On::both, kWord},
                   {"why", said("Why"), M::text, of(&L::why)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table specimens(const PourRecord& p) {
  using L = SpecimenLine;
  return table<L>("specimens", said("Specimens"), p.specimens,
                  {{"ticket", said("Ticket"), M::text, of(&L::ticket)},
                   {"specimen", said("Specimen"), M::text, of(&L::specimen)},
                   {"taken", said("Taken"), M::moment, of(&L::taken)},
                   {"broken", said("Broken"), M::moment, of(&L::broken)},
                   {"age", said("Age"), M::any_span, of(&L::age)},
                   {"strength", said("Strength"), M::strength,
                    [](const L& l) { return megapascals_of(l.strength); }},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table photos(const PourRecord& p) {
  using L = PhotoLine;
  constexpr std::size_t kDigits = 12;  // as under the photo
  return table<L>("photos", said("Photos"), p.photos,
                  {{"blemish", said("Blemish"), M::count, of(&L::blemish)},
                   {"of", said("Kind"), M::text, of(&L::of), On::both, kWord},
                   {"repair", said("Repair"), M::text, of(&L::repair), On::data},
                   {"element", said("Element"), M::text, of(&L::element)},
                   {"side", said("Side"), M::text, of(&L::side), On::data, kWord},
                   {"x", said("From left"), M::length, of(&L::x), On::data},
                   {"z", said("Up from base"), M::length, of(&L::z), On::data},
                   {"at", said("Kept"), M::moment, of(&L::at)},
                   {"file", said("File"), M::text, of(&L::name)},
                   {"bytes", said("Bytes"), M::count, of(&L::bytes)},
                   {"digits", said("SHA-256 begins"), M::text,
                    [](const L& l) { return cell(l.sha256.substr(0, kDigits)); }, On::paper},
                   {"sha256", said("SHA-256"), M::text, of(&L::sha256), On::data},
                   {"standing", said("Its file is"), M::text,
                    [](const L& l) { return cell(to_text(l)); }, On::both, kWord},
                   {"by", said("By"), M::text, of(&L::by)}});
}

}  // namespace rb::columns
