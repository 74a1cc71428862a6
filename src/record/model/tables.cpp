// Every table of the record, a column a row: key, heading, measure, and where its cell comes from.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "record/model/columns.h"
#include "words/sentence.h"

namespace rb {

using namespace columns;

namespace {

PourRecord in_place_of(const PourWithoutPlan& pour, const Language& language) {
  PourRecord record;
  record.id = pour.pour.text;
  const Saying lost{
      said("the event that opens this pour is damaged, its plan with it: it cannot be "
           "shown nor judged; {count} of its events are whole and kept"),
      {{"count", std::to_string(pour.events)}}};
  record.damaged.push_back({"", words_of(lost, {.language = language})});
  for (const UnreadEvent& e : pour.unread.damaged) record.damaged.push_back({e.id.text, e.what});
  for (const UnreadEvent& e : pour.unread.set_aside)
    record.set_aside.push_back({e.id.text, e.what});
  return record;
}

Table pours(const std::vector<PourRecord>& all) {
  using L = PourRecord;
  return table<L>("pours", said("Pours"), all,
                  {{"pour", said("Pour"), M::text, of(&L::id)},
                   {"site", said("Site"), M::text, of(&L::site)},
                   {"name", said("Name"), M::text, of(&L::name)},
                   {"method", said("Pressure method"), M::text, of(&L::method)},
                   {"opened", said("Opened"), M::moment, of(&L::opened)},
                   {"closed", said("Closed"), M::moment, of(&L::closed)},
                   {"events", said("Events"), M::count,
                    [](const L& l) { return Cell{static_cast<double>(l.events)}; }},
                   {"from_script", said("Brought in from a script"), M::count,
                    [](const L& l) { return Cell{static_cast<double>(l.from_script)}; }},
                   {"trucks", said("Loads discharged"), M::count,
                    [](const L& l) { return Cell{static_cast<double>(l.trucks)}; }},
                   {"placed", said("Placed by ticket"), M::volume, of(&L::placed)},
                   {"net", said("Net below the top"), M::volume, of(&L::net)}});
}

std::size_t lifts_joined(const PourRecord& pour, bool late) {
  std::set<std::pair<std::string, int>> joints;
  for (const JointLine& joint : pour.joints) {
    if (!late || !joint.in_time) joints.emplace(joint.element, joint.lift);
  }
  return joints.size();
}

std::size_t signed_roles(const PourRecord& pour) {
  return static_cast<std::size_t>(
      std::count_if(pour.signatures.begin(), pour.signatures.end(),
                    [](const SignatureLine& line) { return line.at.has_value(); }));
}

// Who signed, by name.
std::string signers(const PourRecord& pour) {
  std::string names;
  for (const SignatureLine& line : pour.signatures) {
    if (line.at) names += (names.empty() ? "" : ", ") + line.by;
  }
  return names;
}

Table edition(const DailyRecord& record) {
  using L = DailyRecord;
  return table<L>("edition", said("Edition"), {record},
                  {{"edition", said("Edition"), M::count, of(&L::edition)},
                   {"earlier_file", said("The one before it"), M::text,
                    [](const L& l) { return l.earlier ? cell(l.earlier->file) : Cell{}; }},
                   {"earlier_sha256", said("SHA-256 of that file"), M::text,
                    [](const L& l) { return l.earlier ? cell(l.earlier->sha256) : Cell{}; }}});
}

}  // namespace

Table day_table(const DailyRecord& record) {
  using L = PourRecord;
  return table<L>(
      "day_pours", said("Pours of the day"), record.pours,
      {{"name", said("Pour"), M::text,
        [](const L& l) { return cell(l.name.empty() ? l.id : l.name); }},
       {"opened", said("Opened"), M::moment, of(&L::opened)},
       {"closed", said("Closed"), M::moment, of(&L::closed)},
       {"placed", said("Placed by ticket"), M::volume, of(&L::placed)},
       {"net", said("Net below the top"), M::volume, of(&L::net)},
       {"lifts", said("Lifts"), M::count, [](const L& l) { return cell(l.lifts.size()); }},
       {"open", said("Findings open"), M::count, of(&L::causes_open)},
       {"accepted", said("accepted"), M::count, of(&L::causes_accepted)},
       {"sent_back", said("sent back"), M::count, of(&L::causes_sent_back)},
       {"joints", said("Joints"), M::count,
        [](const L& l) { return cell(lifts_joined(l, false)); }},
       {"joints_late", said("not in time"), M::count,
        [](const L& l) { return cell(lifts_joined(l, true)); }},
       {"signatures", said("Signatures"), M::count,
        [](const L& l) { return cell(signed_roles(l)); }},
       {"signed_by", said("Signed by"), M::text, [](const L& l) { return cell(signers(l)); }}});
}

std::vector<Table> tables_of(const PourRecord& p, Units units) {
  return {people(p), elements(p),       mixes(p),      damaged(p),    findings(p),
          lifts(p),  tops(p),           joints(p),     forms(p),      runs(p),
          power(p),  settings(p),       moves(p),      inserts(p),    trucks(p),
          ready(p),  limits(p, units),  air(p),        holds(p),      corrections(p),
          late(p),   uncertain(p),      aside(p),      set_aside(p),  notes(p),
          cures(p),  concrete_temps(p), maturities(p), specimens(p),  permits(p),
          strips(p), blemishes(p),      photos(p),     amendments(p), signatures(p)};
}

Table table_of(const PourWithoutPlan& pour, const Language& language) {
  return damaged(in_place_of(pour, language));
}

std::vector<Table> tables_of(const DailyRecord& record) {
  std::vector<Table> all = tables_of(PourRecord{}, record.units);
  for (Table& t : all) t.columns.insert(t.columns.begin(), {"pour", said("Pour").english});
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
  for (const PourWithoutPlan& pour : record.without_plan) add(in_place_of(pour, record.language));
  all.insert(all.begin(), pours(record.pours));
  all.insert(all.begin(), day_table(record));
  if (record.edition > 1) all.push_back(edition(record));
  return all;
}

std::string key_with_unit(const Column& column) {
  return column.key + key_suffix(column.measure);
}

}  // namespace rb
