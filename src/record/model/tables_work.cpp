// The tables of what was done and of what was found.
#include <fmt/format.h>

#include "record/model/columns.h"

namespace rb::columns {

// "2", and behind it of the same cause "2.2", "2.3".
static std::string number_text(const FindingLine& f) {
  return f.of_cause == 1 ? fmt::format("{}", f.cause) : fmt::format("{}.{}", f.cause, f.of_cause);
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
      "findings", said("Findings"), p.findings,
      {{"number", said("No."), M::text, [](const L& f) { return cell(number_text(f)); }},
       {"weight", said("Weight"), M::text, [](const L& f) { return cell(to_text(f.severity)); },
        On::both, kWord},
       {"title", said("What"), M::text, of(&L::title), On::paper},
       {"rule", said("Rule"), M::text, of(&L::rule), On::data},
       {"place", said("Where"), M::text, of(&L::place), On::paper},
       {"element", said("Element"), M::text, of(&L::element), On::data},
       {"lift", said("Lift"), M::count, of(&L::lift), On::data},
       {"bay", said("Bay"), M::count, of(&L::bay), On::data},
       {"side", said("Side"), M::text, of(&L::side), On::data, kWord},
       {"row", said("Row"), M::text, of(&L::row), On::data},
       {"from", said("From"), M::moment, of(&L::from)},
       {"to", said("To"), M::moment, of(&L::to), On::data},
       {"measured_text", said("Measured"), M::text, of(&L::measured_text), On::paper},
       {"limit_text", said("Limit"), M::text, of(&L::limit_text), On::paper},
       {"measured", said("Measured (SI)"), M::number,
        [](const L& f) { return cell(number_of(f.measured)); }, On::data},
       {"limit", said("Limit (SI)"), M::number, [](const L& f) { return cell(number_of(f.limit)); },
        On::data},
       {"unit", said("Unit"), M::text,
        [](const L& f) { return cell(unit_of(f.measured ? f.measured : f.limit)); }, On::data},
       {"told", said("What was seen, and what to do"), M::text, of(&L::told), On::paper},
       {"says", said("What was seen (SI)"), M::text, of(&L::says_si), On::data},
       {"source", said("Limit from"), M::text, of(&L::source), On::data},
       {"advice", said("What to do"), M::text, of(&L::advice), On::data},
       {"group", said("Cause"), M::text, of(&L::group), On::data},
       {"standing", said("Review"), M::text, of(&L::standing), On::data, kWord},
       {"reviewed_by", said("Reviewed by"), M::text, of(&L::reviewed_by), On::data},
       {"reviewed_at", said("Reviewed at"), M::moment, of(&L::reviewed_at), On::data},
       {"reviewed_why", said("Why"), M::text, of(&L::reviewed_why), On::data},
       {"figures", said("Figures"), M::text, of(&L::figures), On::data}});
}

Table lifts(const PourRecord& p) {
  using L = LiftLine;
  return table<L>("lifts", said("Lifts"), p.lifts,
                  {{"element", said("Element"), M::text, of(&L::element)},
                   {"lift", said("Lift"), M::count, of(&L::lift)},
                   {"placed_from", said("Placed from"), M::moment, of(&L::placed_from)},
                   {"placed_to", said("Placed to"), M::moment, of(&L::placed_to)},
                   {"top", said("Top"), M::length, of(&L::top)},
                   {"rise_mean", said("Rise, mean"), M::rate, of(&L::rise_mean)},
                   {"rise_window", said("Rise, worst window"), M::rate, of(&L::rise_window)},
                   {"rise_limit", said("Rise limit"), M::rate, of(&L::rise_limit)},
                   {"under_share", said("Under-dosed"), M::share, of(&L::under_share)},
                   {"min_dose", said("Least dose"), M::span, of(&L::min_dose)},
                   {"mean_dose", said("Mean dose"), M::span, of(&L::mean_dose)}});
}

static std::string bays_text(int from, int to) {
  return from == to ? std::to_string(from) : fmt::format("{}\u2013{}", from, to);
}

Table tops(const PourRecord& p) {
  using L = TopLine;
  return table<L>(
      "tops", said("Tops as they were read"), p.tops,
      {{"at", said("At"), M::moment, of(&L::at)},
       {"element", said("Element"), M::text, of(&L::element)},
       {"bays", said("Bays"), M::text, [](const L& l) { return cell(bays_text(l.bay, l.bay_to)); }},
       {"height", said("Top"), M::length, of(&L::height)},
       {"fell", said("Under what stood"), M::text,
        [](const L& l) { return l.fell ? cell(said("yes")) : Cell{}; }, On::both, kWord},
       {"by", said("By"), M::text, of(&L::by)}});
}

Table joints(const PourRecord& p) {
  using L = JointLine;
  return table<L>(
      "joints", said("Joints between lifts"), p.joints,
      {{"element", said("Element"), M::text, of(&L::element)},
       {"lift", said("On lift"), M::count, of(&L::lift)},
       {"bays", said("Bays"), M::text, [](const L& l) { return cell(bays_text(l.bay, l.bay_to)); }},
       {"height", said("At height"), M::length, of(&L::height)},
       {"came", said("It came"), M::moment, of(&L::came)},
       {"covered", said("Covered"), M::moment, of(&L::covered)},
       {"knitted", said("Knitted"), M::moment, of(&L::knitted)},
       {"sets", said("It sets"), M::moment, of(&L::sets)},
       {"in_time", said("In time"), M::yes_no, of(&L::in_time)},
       {"decided", said("Treatment decided"), M::yes_no, of(&L::decided), On::data}});
}

Table forms(const PourRecord& p) {
  using L = FormLine;
  return table<L>("form_pressure", said("Greatest pressure on the form"), p.forms,
                  {{"element", said("Element"), M::text, of(&L::element)},
                   {"bay", said("Bay"), M::count, of(&L::bay)},
                   {"greatest", said("Pressure"), M::pressure, of(&L::greatest)},
                   {"rating", said("Form rating"), M::pressure, of(&L::rating)},
                   {"height", said("At height"), M::length, of(&L::height)},
                   {"at", said("At"), M::moment, of(&L::at)},
                   {"from", said("From"), M::text, of(&L::from)}});
}

Table runs(const PourRecord& p) {
  using L = RunLine;
  return table<L>("runs", said("Runs of the rows"), p.runs,
                  {{"element", said("Element"), M::text, of(&L::element)},
                   {"side", said("Side"), M::text, of(&L::side), On::both, kWord},
                   {"row", said("Row"), M::text, of(&L::row)},
                   {"lift", said("Lift"), M::count, of(&L::lift)},
                   {"from", said("From"), M::moment, of(&L::from)},
                   {"to", said("To"), M::moment, of(&L::to)},
                   {"ran", said("Ran"), M::span, of(&L::ran)},
                   {"counts", said("Seconds that count"), M::span, of(&L::counts), On::data},
                   {"speed_low", said("Lowest speed"), M::speed, of(&L::speed_low), On::data},
                   {"speed", said("Speed"), M::speed, of(&L::speed)},
                   {"head", said("Pressure at the row"), M::pressure, of(&L::head)},
                   {"cables", said("Cables confirmed"), M::yes_no, of(&L::cables)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table power(const PourRecord& p) {
  using L = PowerLine;
  return table<L>("power", said("Inverters, cords and generators: the most at once"), p.power,
                  {{"inverter", said("Inverter"), M::text, of(&L::inverter)},
                   {"at", said("At"), M::moment, of(&L::at)},
                   {"motors", said("Motors"), M::count, of(&L::motors)},
                   {"amps", said("Drawn"), M::current, of(&L::amps)},
                   {"gives", said("It gives"), M::current, of(&L::gives)},
                   {"cords", said("Cords"), M::text, of(&L::cords)},
                   {"trunk_amps", said("On the trunk"), M::current, of(&L::trunk_amps)},
                   {"lost", said("Volts lost"), M::share, of(&L::lost)},
                   {"generator", said("Generator"), M::text, of(&L::generator)},
                   {"generator_takes", said("Takes"), M::apparent_power, of(&L::generator_takes)},
                   {"generator_gives", said("Gives"), M::apparent_power, of(&L::generator_gives)}});
}

Table settings(const PourRecord& p) {
  using L = SettingLine;
  return table<L>("settings", said("Settings and trips of inverters"), p.settings,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"inverter", said("Inverter"), M::text, of(&L::inverter)},
                   {"what", said("What"), M::text, of(&L::what), On::both, kWord},
                   {"speed", said("Speed"), M::speed, of(&L::speed)},
                   {"volts", said("Volts"), M::potential, of(&L::volts)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table moves(const PourRecord& p) {
  using L = MoveLine;
  return table<L>("moves", said("Motors hung and taken down"), p.moves,
                  {{"element", said("Element"), M::text, of(&L::element)},
                   {"side", said("Side"), M::text, of(&L::side), On::both, kWord},
                   {"row", said("Row"), M::text, of(&L::row)},
                   {"motors", said("Motors"), M::text, of(&L::motors)},
                   {"hung", said("Hung"), M::moment, of(&L::hung)},
                   {"down", said("Taken down"), M::moment, of(&L::down)},
                   {"cables", said("Cables fixed"), M::yes_no, of(&L::cables)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table inserts(const PourRecord& p) {
  using L = InsertLine;
  return table<L>(
      "insertions", said("Insertions of internal vibrators"), p.inserts,
      {{"at", said("At"), M::moment, of(&L::at)},
       {"element", said("Element"), M::text, of(&L::element)},
       {"lift", said("Lift"), M::count, of(&L::lift)},
       {"bay", said("Bay"), M::text,
        [](const L& l) { return cell(l.bay ? std::to_string(*l.bay) : std::string{"all"}); },
        On::both, kWord},
       {"group", said("Head group"), M::count, of(&L::group)},
       {"spacing", said("Spacing"), M::length, of(&L::spacing)},
       {"each", said("Each"), M::span, of(&L::each)},
       {"depth_below", said("Into lift below"), M::length, of(&L::depth_below)},
       {"by", said("By"), M::text, of(&L::by)}});
}

Table trucks(const PourRecord& p) {
  using L = TruckLine;
  return table<L>("trucks", said("Trucks and tests"), p.loads,
                  {{"ticket", said("Ticket"), M::text, of(&L::ticket)},
                   {"mix", said("Mix"), M::text, of(&L::mix)},
                   {"element", said("Element"), M::text, of(&L::element)},
                   {"volume", said("Volume"), M::volume, of(&L::volume)},
                   {"part", said("Of it"), M::volume, of(&L::part)},
                   {"water_added", said("Water added"), M::volume, of(&L::water_added), On::data},
                   {"returned", said("Returned"), M::volume, of(&L::returned), On::data},
                   {"batched", said("Batched"), M::moment, of(&L::batched)},
                   {"arrived", said("Arrived"), M::moment, of(&L::arrived), On::data},
                   {"discharged", said("Discharged"), M::moment, of(&L::discharged)},
                   {"ended", said("Discharge ended"), M::moment, of(&L::ended), On::data},
                   {"age", said("Age"), M::age, of(&L::age)},
                   {"tested", said("Tested"), M::moment, of(&L::tested)},
                   {"slump", said("Slump"), M::small_length, of(&L::slump)},
                   {"temp", said("Temp"), M::temperature, of(&L::temp)},
                   {"air", said("Air"), M::percent, of(&L::air)},
                   {"density", said("Density"), M::density, of(&L::density), On::data}});
}

Table corrections(const PourRecord& p) {
  using L = CorrectionLine;
  return table<L>("corrections", said("Corrections"), p.corrections,
                  {{"at", said("Corrected"), M::moment, of(&L::at)},
                   {"by", said("By"), M::text, of(&L::by)},
                   {"what", said("How"), M::text, of(&L::what), On::both, kWord},
                   {"changes", said("What (SI)"), M::text, of(&L::changes)},
                   {"why", said("Why"), M::text, of(&L::why)},
                   {"before", said("Line before"), M::text, of(&L::before), On::data},
                   {"after", said("Line after"), M::text, of(&L::after), On::data}});
}

Table late(const PourRecord& p) {
  using L = LateLine;
  return table<L>("late", said("Entered late"), p.late,
                  {{"at", said("Happened"), M::moment, of(&L::at)},
                   {"entered", said("Entered"), M::moment, of(&L::entered)},
                   {"late", said("Late by"), M::age, of(&L::late)},
                   {"what", said("What (SI)"), M::text, of(&L::what)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table uncertain(const PourRecord& p) {
  using L = UncertainLine;
  return table<L>("uncertain", said("Times that may be off"), p.uncertain,
                  {{"at", said("Happened"), M::moment, of(&L::at)},
                   {"off_by", said("May be off by"), M::span, of(&L::off_by)},
                   {"what", said("What (SI)"), M::text, of(&L::what)},
                   {"by", said("By"), M::text, of(&L::by)}});
}

Table aside(const PourRecord& p) {
  using L = AsideLine;
  return table<L>("aside", said("Set aside, and clock steps"), p.aside,
                  {{"at", said("At"), M::moment, of(&L::at)},
                   {"what", said("What (SI)"), M::text, of(&L::what)},
                   {"why", said("Why"), M::text, of(&L::why)}});
}

static const std::vector<Col<UnreadLine>>& unread_columns() {
  using L = UnreadLine;
  static const std::vector<Col<L>> columns{
      {"event", said("Event"), M::text, of(&L::event)},
      {"what_is_known", said("What is known"), M::text, of(&L::what), On::both, kWord}};
  return columns;
}

Table damaged(const PourRecord& p) {
  return table<UnreadLine>("damaged", said("Damaged events"), p.damaged, unread_columns());
}

Table set_aside(const PourRecord& p) {
  return table<UnreadLine>("newer", said("Kept, of a kind a newer Risebook wrote"), p.set_aside,
                           unread_columns());
}

}  // namespace rb::columns
