// Every table of the record, a column a row: key, heading, measure, and where its cell comes from.
#include <fmt/format.h>

#include <functional>
#include <utility>

#include "record/model/clean_text.h"
#include "record/model/table.h"

namespace rb {

namespace {

Cell cell(const std::string& text) {
  if (text.empty()) return {};
  return clean_text(text);
}
Cell cell(const char* text) {
  return cell(std::string{text});
}
Cell cell(bool yes) {
  return yes;
}
Cell cell(int number) {
  return static_cast<double>(number);
}
Cell cell(double number) {
  return number;
}
Cell cell(Moment moment) {
  return moment;
}
Cell cell(Seconds span) {
  return in_seconds(span);
}
Cell cell(Length q) {
  return in_metres(q);
}
Cell cell(Volume q) {
  return in_cubic_metres(q);
}
Cell cell(Velocity q) {
  return in_metres_per_hour(q);
}
Cell cell(Pressure q) {
  return in_kilopascals(q);
}
Cell cell(UnitWeight q) {
  return in_kilonewtons_per_m3(q);
}
Cell cell(MassPerArea q) {
  return in_kilograms_per_m2(q);
}
Cell cell(MassPerVolume q) {
  return in_kilograms_per_m3(q);
}
Cell cell(Frequency q) {
  return in_vibrations_per_minute(q);
}
Cell cell(Celsius t) {
  return t.degrees;
}
template <class T>
Cell cell(const std::optional<T>& value) {
  return value ? cell(*value) : Cell{};
}

template <class Line>
struct Col {
  const char* key;
  const char* heading;
  Measure measure;
  std::function<Cell(const Line&)> of;
  On on = On::both;
};

template <class Line>
Table table(const char* key, const char* title, const std::vector<Line>& lines,
            const std::vector<Col<Line>>& columns) {
  Table made{key, title, {}, {}};
  for (const auto& c : columns) made.columns.push_back({c.key, c.heading, c.measure, c.on});
  for (const Line& line : lines) {
    std::vector<Cell> row;
    row.reserve(columns.size());
    for (const auto& c : columns) row.push_back(c.of(line));
    made.rows.push_back(std::move(row));
  }
  return made;
}

// A member as a cell.
template <class Line, class T>
std::function<Cell(const Line&)> of(T Line::*member) {
  return [member](const Line& line) { return cell(line.*member); };
}

using M = Measure;

std::string place_text(const FindingLine& f) {
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

// What was seen, what to do and where the limit is from, a line each.
std::string told_text(const FindingLine& f) {
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
std::optional<double> number_of(const std::optional<Amount>& figure) {
  return figure ? std::optional{figure->si} : std::nullopt;
}
std::string unit_of(const std::optional<Amount>& figure) {
  return figure ? script_unit(figure->measure) : "";
}

Table findings(const PourRecord& p) {
  using L = FindingLine;
  return table<L>(
      "findings", "Findings", p.findings,
      {{"weight", "Weight", M::text, [](const L& f) { return cell(to_text(f.severity)); }},
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
       {"advice", "What to do", M::text, of(&L::advice), On::data}});
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

Table runs(const PourRecord& p) {
  using L = RunLine;
  return table<L>("runs", "Runs of the rows", p.runs,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"side", "Side", M::text, of(&L::side)},
                   {"row", "Row", M::text, of(&L::row)},
                   {"from", "From", M::moment, of(&L::from)},
                   {"to", "To", M::moment, of(&L::to)},
                   {"ran", "Ran", M::span, of(&L::ran)},
                   {"speed_low", "Lowest speed", M::speed, of(&L::speed_low), On::data},
                   {"speed", "Speed", M::speed, of(&L::speed)},
                   {"head", "Pressure at the row", M::pressure, of(&L::head)},
                   {"cables", "Cables confirmed", M::yes_no, of(&L::cables)}});
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

const std::vector<Col<UnreadLine>>& unread_columns() {
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
PourRecord in_place_of(const PourWithoutPlan& pour) {
  PourRecord record;
  record.id = pour.pour.text;
  record.damaged.push_back(
      {"", fmt::format("the event that opens this pour is damaged, its plan with it: it cannot be "
                       "shown nor judged; {} of its events are whole and kept",
                       pour.events)});
  for (const UnreadEvent& e : pour.unread.damaged) record.damaged.push_back({e.id.text, e.what});
  for (const UnreadEvent& e : pour.unread.set_aside)
    record.set_aside.push_back({e.id.text, e.what});
  return record;
}

Table elements(const PourRecord& p) {
  using L = ElementLine;
  return table<L>("elements", "Elements", p.elements,
                  {{"element", "Element", M::text, of(&L::element)},
                   {"kind", "Kind", M::text, of(&L::kind)},
                   {"length", "Length", M::length, of(&L::length)},
                   {"height", "Height", M::length, of(&L::height)},
                   {"thickness", "Thickness", M::small_length, of(&L::thickness)},
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
  return table<L>(
      "weather", "Air temperature", p.air,
      {{"at", "At", M::moment, of(&L::at)}, {"temp", "Air", M::temperature, of(&L::temp)}});
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

Table pours(const std::vector<PourRecord>& all) {
  using L = PourRecord;
  return table<L>("pours", "Pours", all,
                  {{"pour", "Pour", M::text, of(&L::id)},
                   {"site", "Site", M::text, of(&L::site)},
                   {"name", "Name", M::text, of(&L::name)},
                   {"method", "Pressure method", M::text, of(&L::method)},
                   {"opened", "Opened", M::moment, of(&L::opened)},
                   {"closed", "Closed", M::moment, of(&L::closed)},
                   {"events", "Events", M::count,
                    [](const L& l) { return Cell{static_cast<double>(l.events)}; }},
                   {"from_script", "Brought in from a script", M::count,
                    [](const L& l) { return Cell{static_cast<double>(l.from_script)}; }},
                   {"trucks", "Loads discharged", M::count,
                    [](const L& l) { return Cell{static_cast<double>(l.trucks)}; }},
                   {"placed", "Placed by ticket", M::volume, of(&L::placed)},
                   {"net", "Net below the top", M::volume, of(&L::net)}});
}

Table edition(const DailyRecord& record) {
  using L = DailyRecord;
  return table<L>("edition", "Edition", {record},
                  {{"edition", "Edition", M::count, of(&L::edition)},
                   {"earlier_file", "The one before it", M::text,
                    [](const L& l) { return l.earlier ? cell(l.earlier->file) : Cell{}; }},
                   {"earlier_sha256", "SHA-256 of that file", M::text,
                    [](const L& l) { return l.earlier ? cell(l.earlier->sha256) : Cell{}; }}});
}

Table signatures(const PourRecord& p) {
  using L = SignatureLine;
  return table<L>("signatures", "Signatures", p.signatures,
                  {{"role", "Role", M::text, of(&L::role)},
                   {"by", "Name", M::text, of(&L::by)},
                   {"verdict", "Verdict", M::text, of(&L::verdict)},
                   {"comment", "Comment", M::text, of(&L::comment)},
                   {"at", "Signed", M::moment, of(&L::at)}});
}

}  // namespace

std::vector<Table> tables_of(const PourRecord& p, Units units) {
  return {people(p),    elements(p), mixes(p),       damaged(p),   findings(p),  lifts(p),
          runs(p),      moves(p),    inserts(p),     trucks(p),    ready(p),     limits(p, units),
          air(p),       holds(p),    corrections(p), late(p),      uncertain(p), aside(p),
          set_aside(p), notes(p),    strips(p),      blemishes(p), signatures(p)};
}

Table table_of(const PourWithoutPlan& pour) {
  return damaged(in_place_of(pour));
}

std::vector<Table> tables_of(const DailyRecord& record) {
  std::vector<Table> all = tables_of(PourRecord{}, record.units);
  for (Table& t : all) t.columns.insert(t.columns.begin(), {"pour", "Pour"});
  const auto add = [&](const PourRecord& pour) {
    std::vector<Table> some = tables_of(pour, record.units);
    for (std::size_t i = 0; i < all.size(); ++i) {
      for (auto& row : some[i].rows) {
        row.insert(row.begin(), cell(pour.id));
        all[i].rows.push_back(std::move(row));
      }
    }
  };
  for (const PourRecord& pour : record.pours) add(pour);
  for (const PourWithoutPlan& pour : record.without_plan) add(in_place_of(pour));
  all.insert(all.begin(), pours(record.pours));
  if (record.edition > 1) all.push_back(edition(record));
  return all;
}

std::string heading_with_unit(const Column& column, Units units) {
  const std::string unit = unit_text(column.measure, units);
  return unit.empty() ? column.heading : fmt::format("{} ({})", column.heading, unit);
}

std::string key_with_unit(const Column& column) {
  return column.key + key_suffix(column.measure);
}

}  // namespace rb
