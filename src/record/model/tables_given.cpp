// The tables of what was planned, seen on the site and signed.
#include <fmt/format.h>

#include "record/model/columns.h"

namespace rb::columns {

Table elements(const PourRecord& p) {
  using L = ElementLine;
  return table<L>(
      "elements", "Elements", p.elements,
      {{"element", "Element", M::text, of(&L::element)},
       {"kind", "Kind", M::text, of(&L::kind)},
       {"length", "Length", M::length, of(&L::length)},
       {"height", "Height", M::length, of(&L::height)},
       {"thickness", "Thickness", M::small_length, of(&L::thickness)},
       {"thickness_top", "Thickness at top", M::small_length, of(&L::thickness_top), On::data},
       {"batter", "Batter", M::angle, of(&L::batter_deg), On::data},
       {"form_rating", "Form rating", M::pressure, of(&L::form_rating)},
       {"form_mass", "Form mass", M::mass_per_area, of(&L::form_mass), On::data},
       {"rise_limit", "Rise limit planned", M::rate, of(&L::rise_limit)},
       {"bays", "Bays", M::count, of(&L::bays)},
       {"lifts", "Lifts planned", M::count, of(&L::lifts)},
       {"rows", "Rows", M::count, of(&L::rows)},
       {"mixes", "Mixes placed", M::text, of(&L::mixes)}});
}

Table mixes(const PourRecord& p) {
  using L = MixLine;
  return table<L>("mixes", "Mixes", p.mixes,
                  {{"mix", "Mix", M::text, of(&L::mix)},
                   {"unit_weight", "Unit weight", M::unit_weight, of(&L::unit_weight)},
                   {"slump", "Slump", M::small_length, of(&L::slump)},
                   {"initial_set", "Initial set", M::long_span, of(&L::initial_set)},
                   {"set_reference", "at", M::temperature, of(&L::set_reference)},
                   {"cement", "Cement class", M::text, of(&L::cement)}});
}

Table limits(const PourRecord& p, Units units) {
  using L = LimitLine;
  return table<L>(
      "limits", "Limits it was held to", p.limits,
      {{"limit", "Limit", M::text, of(&L::limit)},
       {"value_text", "Value", M::text,
        [units](const L& l) { return cell(amount_text(l.value, units)); }, On::paper},
       {"value", "Value (SI)", M::number, [](const L& l) { return cell(l.value.si); }, On::data},
       {"unit", "Unit", M::text,
        [](const L& l) { return cell(std::string{script_unit(l.value.measure)}); }, On::data},
       {"from", "From", M::text, of(&L::from)}});
}

Table people(const PourRecord& p) {
  using L = PersonLine;
  return table<L>("people", "People", p.people,
                  {{"person", "Person", M::text, of(&L::id)},
                   {"name", "Name", M::text, of(&L::name)},
                   {"role", "Role", M::text, of(&L::role)}});
}

Table ready(const PourRecord& p) {
  using L = ReadyLine;
  return table<L>("readiness", "Readiness before the pour", p.ready,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"item", "Item", M::text, of(&L::item)},
                   {"ok", "In order", M::yes_no, of(&L::ok)},
                   {"note", "Note", M::text, of(&L::note)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table air(const PourRecord& p) {
  using L = AirLine;
  return table<L>("weather", "Weather", p.air,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"temp", "Air", M::temperature, of(&L::temp)},
                   {"humidity", "Humidity", M::percent, of(&L::humidity)},
                   {"wind", "Wind", M::wind, [](const L& l) {
                      return l.wind ? Cell{in_metres_per_second(*l.wind)} : Cell{};
                    }}});
}

Table holds(const PourRecord& p) {
  using L = HoldLine;
  return table<L>("holds", "Holds", p.holds,
                  {{"from", "From", M::moment, of(&L::from)},
                   {"to", "To", M::moment, of(&L::to)},
                   {"reason", "Reason", M::text, of(&L::reason)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table notes(const PourRecord& p) {
  using L = NoteLine;
  return table<L>("notes", "Notes", p.notes,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"by", "By", M::text, of(&L::by)},
                   {"element", "Element", M::text, of(&L::element)},
                   {"lift", "Lift", M::count, of(&L::lift)},
                   {"text", "Note", M::text, of(&L::text)}});
}

Table strips(const PourRecord& p) {
  using L = StripLine;
  return table<L>("strips", "Stripped", p.strips,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"element", "Element", M::text, of(&L::element)},
                   {"side", "Side", M::text, of(&L::side)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table blemishes(const PourRecord& p) {
  using L = BlemishLine;
  return table<L>("blemishes", "Blemishes on the stripped face", p.blemishes,
                  {{"at", "Seen", M::moment, of(&L::at)},
                   {"element", "Element", M::text, of(&L::element)},
                   {"side", "Side", M::text, of(&L::side)},
                   {"kind", "Kind", M::text, of(&L::kind)},
                   {"x", "From left", M::length, [](const L& l) { return cell(l.patch.x); }},
                   {"z", "Up from base", M::length, [](const L& l) { return cell(l.patch.z); }},
                   {"w", "Wide", M::length, [](const L& l) { return cell(l.patch.w); }},
                   {"h", "High", M::length, [](const L& l) { return cell(l.patch.h); }},
                   {"note", "Note", M::text, of(&L::note)},
                   {"repairs", "Repair", M::text, of(&L::repairs)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table signatures(const PourRecord& p) {
  using L = SignatureLine;
  return table<L>(
      "signatures", "Signatures", p.signatures,
      {{"role", "Role", M::text, of(&L::role)},
       {"by", "Name", M::text, of(&L::by)},
       {"verdict", "Verdict", M::text, of(&L::verdict)},
       {"comment", "Comment", M::text, of(&L::comment)},
       {"at", "Signed", M::moment, of(&L::at)},
       {"key", "Key", M::text, of(&L::key)},
       {"witness", "Witness of the key", M::text, of(&L::witness)},
       {"after", "Events after", M::count, of(&L::after)},
       {"after_changing", "Of those, changing", M::count, of(&L::after_changing)},
       {"open", "Named as open", M::count, of(&L::open)},
       {"open_findings", "Findings named as open", M::text, of(&L::open_findings), On::data},
       {"public_key", "Public key", M::text, of(&L::public_key), On::data},
       {"signed_book", "Book signed", M::text, of(&L::signed_book), On::data},
       {"signed_event", "Event signed", M::count, of(&L::signed_event), On::data},
       {"signed_hash", "Its hash", M::text, of(&L::signed_hash), On::data},
       {"signed_events", "Events of the pour signed", M::count, of(&L::signed_events), On::data},
       {"signature", "Signature", M::text, of(&L::signature), On::data}});
}

Table amendments(const PourRecord& p) {
  using L = AmendmentLine;
  return table<L>("amendments", "Plan amended under way", p.amendments,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"path", "What", M::text, of(&L::path)},
                   {"was", "Was", M::text, of(&L::was)},
                   {"value", "Is", M::text, of(&L::value)},
                   {"why", "Why", M::text, of(&L::why)},
                   {"by", "By", M::text, of(&L::by)}});
}

}  // namespace rb::columns
