// Every table of the record, a column a row: key, heading, measure, and where its cell comes from.
#include <fmt/format.h>

#include "record/model/columns.h"

namespace rb {

using namespace columns;

namespace {

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

}  // namespace

std::vector<Table> tables_of(const PourRecord& p, Units units) {
  return {people(p),     elements(p),  mixes(p),       damaged(p), findings(p),
          lifts(p),      forms(p),     runs(p),        power(p),   settings(p),
          moves(p),      inserts(p),   trucks(p),      ready(p),   limits(p, units),
          air(p),        holds(p),     corrections(p), late(p),    uncertain(p),
          aside(p),      set_aside(p), notes(p),       cures(p),   concrete_temps(p),
          maturities(p), specimens(p), permits(p),     strips(p),  blemishes(p),
          amendments(p), signatures(p)};
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
