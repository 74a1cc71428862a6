// row-missed: a row that serves a lift did not run for it at all.
#include "check/row_time.h"
#include "check/vibrated.h"

namespace rb {

namespace {

// How long after the next lift was begun the row first ran, if all that it reaches of this one was
// still fresh then.
std::optional<Seconds> ran_late(const Look& look, const LiftReport& report, std::size_t row) {
  const LiftState& lift = look.lift(report);
  if (!lift.next_start) return std::nullopt;
  const auto first = look.ran[report.element][row].first_from(*lift.next_start);
  if (!first) return std::nullopt;
  const trade::Face& face = look.faces[report.element];
  const Element& element = look.element(report);
  for (const BayReached& reached : bays_reached(element, element.rows[row])) {
    const Length low = std::max(reached.low, lift.bottom[reached.bay]);
    if (low >= lift.top[reached.bay]) continue;
    const auto came = face.tops[reached.bay].reached(low + trade::kSamePlace);
    if (!came || face.sets_at(*came) <= *first) return std::nullopt;
  }
  return *first - *lift.next_start;
}

void look_row_missed(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.dose_min;
  for_rows_of_lifts(look, [&](const LiftReport& report, std::size_t row, Seconds ran) {
    if (ran > Seconds{} || !look.settled(report) || bare_bays(look, report).all) return;
    Finding f = row_time_finding(look, rule, report, row, ran, limit);
    if (const auto late = ran_late(look, report, row)) {
      f.sentence = said(
          "{element} lift {lift}, row {row} ({side} side): ran only {late} into the next lift, "
          "while this one was still fresh");
      f.facts = {{"late", amount(*late, Measure::age)}};
    }
    out.push_back(std::move(f));
  });
}

}  // namespace

extern const Rule kRowMissed{
    {"row-missed", said("Row never ran"), Severity::mend, Cost::perhaps,
     "a row of the run sheet that was forgotten", said("the plan's run sheet (rows[].serves)"),
     "each row runs for each lift it serves", "plan, by the engineer",
     said("Run it now if its concrete is still plastic and the head on it allows; else "
          "mark the place to be inspected when stripped")},
    look_row_missed};

}  // namespace rb
