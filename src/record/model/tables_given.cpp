// The tables of what was planned, seen on the site and signed.
#include <fmt/format.h>

#include "record/model/columns.h"

namespace rb::columns {

Table elements(const PourRecord& p) {
  using L = ElementLine;
  return table<L>("elements", said("Elements"), p.elements,
                  {{"element", said("Element"), M::text, of(&L::element)},
                   {"kind", said("Kind"), M::text, of(&L::kind), On::both, kWord},
                   {"length", said("Length"), M::length, of(&L::length)},
                   {"height", said("Height"), M::length, of(&L::height)},
                   {"thickness", said("Thickness"), M::small_length, of(&L::thickness)},
                   {"thickness_top", said("Thickness at top"), M::small_length,
                    of(&L::thickness_top), On::data},
                   {"batter", said("Batter"), M::angle, of(&L::batter_deg), On::data},
                   {"form_rating", said("Form rating"), M::pressure, of(&L::form_rating)},
                   {"form_mass", said("Form mass"), M::mass_per_area, of(&L::form_mass), On::data},
                   {"rise_limit", said("Rise limit planned"), M::rate, of(&L::rise_limit)},
                   {"bays", said("Bays"), M::count, of(&L::bays)},
                   {"lifts", said("Lifts planned"), M::count, of(&L::lifts)},
                   {"rows", said("Rows"), M::count, of(&L::rows)},
                   {"mixes", said("Mixes placed"), M::text, of(&L::mixes)}});
}

Table mixes(const PourRecord& p) {
  using L = MixLine;
  return table<L>("mixes", said("Mixes"), p.mixes,
                  {{"mix", said("Mix"), M::text, of(&L::mix)},
                   {"unit_weight", said("Unit weight"), M::unit_weight, of(&L::unit_weight)},
                   {"slump", said("Slump"), M::small_length, of(&L::slump)},
                   {"initial_set", said("Initial set"), M::long_span, of(&L::initial_set)},
                   {"set_reference", said("at"), M::temperature, of(&L::set_reference)},
                   {"cement", said("Cement class"), M::text, of(&L::cement), On::both, kWord}});
}

Table limits(const PourRecord& p, Units units) {
  using L = LimitLine;
  return table<L>(
      "limits", said("Limits it was held to"), p.limits,
      {{"limit", said("Limit"), M::text, of(&L::limit), On::both, kWord},
       {"value_text", said("Value"), M::text,
        [units](const L& l) { return cell(amount_text(l.value, units)); }, On::paper},
       {"value", said("Value (SI)"), M::number, [](const L& l) { return cell(l.value.si); },
        On::data},
       {"unit", said("Unit"), M::text,
        [](const L& l) { return cell(std::string{script_unit(l.value.measure)}); }, On::data},
       {"from", said("From"), M::text, of(&L::from)}});
}

Table people(const PourRecord& p) {
  using L = PersonLine;
  return table<L>("people", said("People"), p.people,
                  {{"person", said("Person"), M::text, of(&L::id)},
                   {"name", said("Name"), M::text, of(&L::name)},
                   {"role", said("Role"), M::text, of(&L::role), On::both, kWord}});
}

Table ready(const PourRecord& p) {
  using L = ReadyLine;
  return table<L>("readiness", said("Readiness before the pour"), p.ready,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"item", said("Item"), M::text, of(&L::item), On::both, kWord},
                   {"ok", said("In order"), M::yes_no, of(&L::ok)},
                   {"note", said("Note"), M::text, of(&L::note)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table air(const PourRecord& p) {
  using L = AirLine;
  return table<L>("weather", said("Weather"), p.air,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"temp", said("Air"), M::temperature, of(&L::temp)},
                   {"humidity", said("Humidity"), M::percent, of(&L::humidity)},
                   {"wind", said("Wind"), M::wind, [](const L& l) {
                      return l.wind ? Cell{in_metres_per_second(*l.wind)} : Cell{};
                    }}});
}

Table holds(const PourRecord& p) {
  using L = HoldLine;
  return table<L>("holds", said("Holds"), p.holds,
                  {{"from", said("From"), M::moment, of(&L::from)},
                   {"to", said("To"), M::moment, of(&L::to)},
                   {"reason", said("Reason"), M::text, of(&L::reason)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table notes(const PourRecord& p) {
  using L = NoteLine;
  return table<L>("notes", said("Notes"), p.notes,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"by", said("By"), M::text, of(&L::by)},
                   {"element", said("Element"), M::text, of(&L::element)},
                   {"lift", said("Lift"), M::count, of(&L::lift)},
                   {"text", said("Note"), M::text, of(&L::text)}});
}

Table strips(const PourRecord& p) {
  using L = StripLine;
  return table<L>("strips", said("Stripped"), p.strips,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"element", said("Element"), M::text, of(&L::element)},
                   {"side", said("Side"), M::text, of(&L::side), On::both, kWord},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table blemishes(const PourRecord& p) {
  using L = BlemishLine;
  return table<L>(
      "blemishes", said("Blemishes on the stripped face"), p.blemishes,
      {{"number", said("No."), M::count, of(&L::number)},
       {"at", said("Seen"), M::moment, of(&L::at)},
       {"element", said("Element"), M::text, of(&L::element)},
       {"side", said("Side"), M::text, of(&L::side), On::both, kWord},
       {"kind", said("Kind"), M::text, of(&L::kind), On::both, kWord},
       {"x", said("From left"), M::length, [](const L& l) { return cell(l.patch.x); }},
       {"z", said("Up from base"), M::length, [](const L& l) { return cell(l.patch.z); }},
       {"w", said("Wide"), M::length, [](const L& l) { return cell(l.patch.w); }},
       {"h", said("High"), M::length, [](const L& l) { return cell(l.patch.h); }},
       {"note", said("Note"), M::text, of(&L::note)},
       {"repairs", said("Repair"), M::text, of(&L::repairs)},
       {"by", said("By"), M::text, of(&L::by)}});
}

Table signatures(const PourRecord& p) {
  using L = SignatureLine;
  return table<L>(
      "signatures", said("Signatures"), p.signatures,
      {{"role", said("Role"), M::text, of(&L::role), On::both, kWord},
       {"by", said("Name"), M::text, of(&L::by)},
       {"verdict", said("Verdict"), M::text, of(&L::verdict), On::both, kWord},
       {"comment", said("Comment"), M::text, of(&L::comment)},
       {"at", said("Signed"), M::moment, of(&L::at)},
       {"key", said("Key"), M::text, of(&L::key)},
       {"witness", said("Witness of the key"), M::text, of(&L::witness)},
       {"after", said("Events after"), M::count, of(&L::after)},
       {"after_changing", said("Of those, changing"), M::count, of(&L::after_changing)},
       {"open", said("Named as open"), M::count, of(&L::open)},
       {"open_findings", said("Findings named as open"), M::text, of(&L::open_findings), On::data},
       {"public_key", said("Public key"), M::text, of(&L::public_key), On::data},
       {"signed_book", said("Book signed"), M::text, of(&L::signed_book), On::data},
       {"signed_event", said("Event signed"), M::count, of(&L::signed_event), On::data},
       {"signed_hash", said("Its hash"), M::text, of(&L::signed_hash), On::data},
       {"signed_events", said("Events of the pour signed"), M::count, of(&L::signed_events),
        On::data},
       {"signature", said("Signature"), M::text, of(&L::signature), On::data}});
}

Table amendments(const PourRecord& p) {
  using L = AmendmentLine;
  return table<L>("amendments", said("Plan amended under way"), p.amendments,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"path", said("What"), M::text, of(&L::path)},
                   {"was", said("Was"), M::text, of(&L::was)},
                   {"value", said("Is"), M::text, of(&L::value)},
                   {"why", said("Why"), M::text, of(&L::why)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

}  // namespace rb::columns
