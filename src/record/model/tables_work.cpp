// The tables of what was done and of what was found.
#include <fmt/format.h>

#include "record/model/columns.h"

namespace rb::columns {

static std::string place_text(const FindingLine& f) {
  std::string text = f.element;
  const auto add = [&text](const std::string& part) {
    if (!part.empty()) text += (text.empty() ? "" : ", ") + part;
  };
  if (f.lift) add(fmt::format("lift {}", *f.lift));
  if (f.bay) add(fmt::format("bay {}", *f.bay));
  if (!f.row.empty()) add("row " + f.row);
  if (!f.side.empty()) add(f.side);
  return text;
}

// "2", and behind it of the same cause "2.2", "2.3".
static std::string number_text(const FindingLine& f) {
  return f.of_cause == 1 ? fmt::format("{}", f.cause) : fmt::format("{}.{}", f.cause, f.of_cause);
}

// What was seen, what to do and where the limit is from, a line each.
static std::string told_text(const FindingLine& f) {
  std::string text;
  const auto line = [&](const char* lead, const std::string& more) {
    if (more.empty()) return;
    text += (text.empty() ? "" : "\n") + (lead + more);
    if (text.back() != '.') text += '.';
  };
  line("", f.says);
  line("Do: ", f.advice);
  line("Limit from: ", f.source);
  return text;
}

// The number of a figure, and its unit, as a script has them.
static std::optional<double> number_of(const std::optional<Amount>& figure) {
  return figure ? std::optional{figure->si} : std::nullopt;
}
static std::string unit_of(const std::optional<Amount>& figure) {
  return figure ? script_unit(figure->measure) : "";
}

Table findings(const PourRecord& p) {
  using L = FindingLine;
  return table<L>(
      "findings", "Findings", p.findings,
      {{"number", "No.", M::text, [](const L& f) { return cell(number_text(f)); }},
       {"weight", "Weight", M::text, [](const L& f) { return cell(to_text(f.severity)); }},
       {"rule", "Rule", M::text, of(&L::rule)},
       {"place", "Where", M::text, [](const L& f) { return cell(place_text(f)); }, On::paper},
       {"element", "Element", M::text, of(&L::element), On::data},
       {"lift", "Lift", M::count, of(&L::lift), On::data},
       {"bay", "Bay", M::count, of(&L::bay), On::data},
       {"side", "Side", M::text, of(&L::side), On::data},
       {"row", "Row", M::text, of(&L::row), On::data},
       {"from", "From", M::moment, of(&L::from)},
       {"to", "To", M::moment, of(&L::to), On::data},
       {"measured_text", "Measured", M::text, of(&L::measured_text), On::paper},
       {"limit_text", "Limit", M::text, of(&L::limit_text), On::paper},
       {"measured", "Measured (SI)", M::number,
        [](const L& f) { return cell(number_of(f.measured)); }, On::data},
       {"limit", "Limit (SI)", M::number, [](const L& f) { return cell(number_of(f.limit)); },
        On::data},
       {"unit", "Unit", M::text,
        [](const L& f) { return cell(unit_of(f.measured ? f.measured : f.limit)); }, On::data},
       {"told", "What was seen, and what to do", M::text,
        [](const L& f) { return cell(told_text(f)); }, On::paper},
       {"says", "What was seen (SI)", M::text, of(&L::says_si), On::data},
       {"source", "Limit from", M::text, of(&L::source), On::data},
       {"advice", "What to do", M::text, of(&L::advice), On::data},
       {"group", "Cause", M::text, of(&L::group), On::data},
       {"standing", "Review", M::text, of(&L::standing), On::data},
       {"reviewed_by", "Reviewed by", M::text, of(&L::reviewed_by), On::data},
       {"reviewed_at", "Reviewed at", M::moment, of(&L::reviewed_at), On::data},
       {"reviewed_why", "Why", M::text, of(&L::reviewed_why), On::data},
       {"figures", "Figures", M::text, of(&L::figures), On::data}});
}

Table lifts(const PourRecord& p) {
  using L = LiftLine;
  return table<L>("lifts", "Lifts", p.lifts,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"lift", "Lift", M::count, of(&L::lift)},
                   {"placed_from", "Placed from", M::moment, of(&L::placed_from)},
                   {"placed_to", "Placed to", M::moment, of(&L::placed_to)},
                   {"top", "Top", M::length, of(&L::top)},
                   {"rise_mean", "Rise, mean", M::rate, of(&L::rise_mean)},
                   {"rise_window", "Rise, worst window", M::rate, of(&L::rise_window)},
                   {"rise_limit", "Rise limit", M::rate, of(&L::rise_limit)},
                   {"under_share", "Under-dosed", M::share, of(&L::under_share)},
                   {"min_dose", "Least dose", M::span, of(&L::min_dose)},
                   {"mean_dose", "Mean dose", M::span, of(&L::mean_dose)}});
}

Table forms(const PourRecord& p) {
  using L = FormLine;
  return table<L>("form_pressure", "Greatest pressure on the form", p.forms,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"bay", "Bay", M::count, of(&L::bay)},
                   {"greatest", "Pressure", M::pressure, of(&L::greatest)},
                   {"rating", "Form rating", M::pressure, of(&L::rating)},
                   {"height", "At height", M::length, of(&L::height)},
                   {"at", "At", M::moment, of(&L::at)},
                   {"from", "From", M::text, of(&L::from)}});
}

Table runs(const PourRecord& p) {
  using L = RunLine;
  return table<L>("runs", "Runs of the rows", p.runs,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"side", "Side", M::text, of(&L::side)},
                   {"row", "Row", M::text, of(&L::row)},
                   {"from", "From", M::moment, of(&L::from)},
                   {"to", "To", M::moment, of(&L::to)},
                   {"ran", "Ran", M::span, of(&L::ran)},
                   {"counts", "Seconds that count", M::span, of(&L::counts), On::data},
                   {"speed_low", "Lowest speed", M::speed, of(&L::speed_low), On::data},
                   {"speed", "Speed", M::speed, of(&L::speed)},
                   {"head", "Pressure at the row", M::pressure, of(&L::head)},
                   {"cables", "Cables confirmed", M::yes_no, of(&L::cables)}});
}

Table power(const PourRecord& p) {
  using L = PowerLine;
  return table<L>("power", "Inverters, cords and generators: the most at once", p.power,
                  {{"inverter", "Inverter", M::text, of(&L::inverter)},
                   {"at", "At", M::moment, of(&L::at)},
                   {"motors", "Motors", M::count, of(&L::motors)},
                   {"amps", "Drawn", M::current, of(&L::amps)},
                   {"gives", "It gives", M::current, of(&L::gives)},
                   {"cords", "Cords", M::text, of(&L::cords)},
                   {"trunk_amps", "On the trunk", M::current, of(&L::trunk_amps)},
                   {"lost", "Volts lost", M::share, of(&L::lost)},
                   {"generator", "Generator", M::text, of(&L::generator)},
                   {"generator_takes", "Takes", M::apparent_power, of(&L::generator_takes)},
                   {"generator_gives", "Gives", M::apparent_power, of(&L::generator_gives)}});
}

Table settings(const PourRecord& p) {
  using L = SettingLine;
  return table<L>("settings", "Settings and trips of inverters", p.settings,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"inverter", "Inverter", M::text, of(&L::inverter)},
                   {"what", "What", M::text, of(&L::what)},
                   {"speed", "Speed", M::speed, of(&L::speed)},
                   {"volts", "Volts", M::potential, of(&L::volts)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table moves(const PourRecord& p) {
  using L = MoveLine;
  return table<L>("moves", "Motors hung and taken down", p.moves,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"side", "Side", M::text, of(&L::side)},
                   {"row", "Row", M::text, of(&L::row)},
                   {"motors", "Motors", M::text, of(&L::motors)},
                   {"hung", "Hung", M::moment, of(&L::hung)},
                   {"down", "Taken down", M::moment, of(&L::down)},
                   {"cables", "Cables fixed", M::yes_no, of(&L::cables)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table inserts(const PourRecord& p) {
  using L = InsertLine;
  return table<L>(
      "insertions", "Insertions of internal vibrators", p.inserts,
      {{"at", "At", M::moment, of(&L::at)},
       {"element", "Element", M::text, of(&L::element)},
       {"lift", "Lift", M::count, of(&L::lift)},
       {"bay", "Bay", M::text,
        [](const L& l) { return cell(l.bay ? std::to_string(*l.bay) : std::string{"all"}); }},
       {"group", "Head group", M::count, of(&L::group)},
       {"spacing", "Spacing", M::length, of(&L::spacing)},
       {"each", "Each", M::span, of(&L::each)},
       {"depth_below", "Into lift below", M::length, of(&L::depth_below)},
       {"by", "By", M::text, of(&L::by)}});
}

Table trucks(const PourRecord& p) {
  using L = TruckLine;
  return table<L>("trucks", "Trucks and tests", p.loads,
                  {{"ticket", "Ticket", M::text, of(&L::ticket)},
                   {"mix", "Mix", M::text, of(&L::mix)},
                   {"element", "Element", M::text, of(&L::element)},
                   {"volume", "Volume", M::volume, of(&L::volume)},
                   {"part", "Of it", M::volume, of(&L::part)},
                   {"water_added", "Water added", M::volume, of(&L::water_added), On::data},
                   {"returned", "Returned", M::volume, of(&L::returned), On::data},
                   {"batched", "Batched", M::moment, of(&L::batched)},
                   {"arrived", "Arrived", M::moment, of(&L::arrived), On::data},
                   {"discharged", "Discharged", M::moment, of(&L::discharged)},
                   {"ended", "Discharge ended", M::moment, of(&L::ended), On::data},
                   {"age", "Age", M::age, of(&L::age)},
                   {"tested", "Tested", M::moment, of(&L::tested)},
                   {"slump", "Slump", M::small_length, of(&L::slump)},
                   {"temp", "Temp", M::temperature, of(&L::temp)},
                   {"air", "Air", M::percent, of(&L::air)},
                   {"density", "Density", M::density, of(&L::density), On::data}});
}

Table corrections(const PourRecord& p) {
  using L = CorrectionLine;
  return table<L>("corrections", "Corrections", p.corrections,
                  {{"at", "Corrected", M::moment, of(&L::at)},
                   {"by", "By", M::text, of(&L::by)},
                   {"what", "How", M::text, of(&L::what)},
                   {"changes", "What (SI)", M::text, of(&L::changes)},
                   {"why", "Why", M::text, of(&L::why)},
                   {"before", "Line before", M::text, of(&L::before), On::data},
                   {"after", "Line after", M::text, of(&L::after), On::data}});
}

Table late(const PourRecord& p) {
  using L = LateLine;
  return table<L>("late", "Entered late", p.late,
                  {{"at", "Happened", M::moment, of(&L::at)},
                   {"entered", "Entered", M::moment, of(&L::entered)},
                   {"late", "Late by", M::age, of(&L::late)},
                   {"what", "What (SI)", M::text, of(&L::what)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table uncertain(const PourRecord& p) {
  using L = UncertainLine;
  return table<L>("uncertain", "Times that may be off", p.uncertain,
                  {{"at", "Happened", M::moment, of(&L::at)},
                   {"off_by", "May be off by", M::span, of(&L::off_by)},
                   {"what", "What (SI)", M::text, of(&L::what)},
                   {"by", "By", M::text, of(&L::by)}});
}

Table aside(const PourRecord& p) {
  using L = AsideLine;
  return table<L>("aside", "Set aside, and clock steps", p.aside,
                  {{"at", "At", M::moment, of(&L::at)},
                   {"what", "What (SI)", M::text, of(&L::what)},
                   {"why", "Why", M::text, of(&L::why)}});
}

static const std::vector<Col<UnreadLine>>& unread_columns() {
  using L = UnreadLine;
  static const std::vector<Col<L>> columns{
      {"event", "Event", M::text, of(&L::event)},
      {"what_is_known", "What is known", M::text, of(&L::what)}};
  return columns;
}

Table damaged(const PourRecord& p) {
  return table<UnreadLine>("damaged", "Damaged events", p.damaged, unread_columns());
}

Table set_aside(const PourRecord& p) {
  return table<UnreadLine>("newer", "Kept, of a kind a newer Risebook wrote", p.set_aside,
                           unread_columns());
}

/// Of a pour that cannot be shown: what stands in its place.

}  // namespace rb::columns
