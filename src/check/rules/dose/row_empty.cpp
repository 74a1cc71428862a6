// row-empty: a row ran with no concrete in its reach.
#include <algorithm>

#include "check/rule.h"

namespace rb {

namespace {

// The hang that stood as a run ended; none when the row was not logged as hung then.
const HangState* hung_at(const PourState& state, const RunState& run, Seconds end) {
  const auto& hangs = state.hangs;  // in order of time
  auto hang = std::lower_bound(hangs.begin(), hangs.end(), end,
                               [](const HangState& h, Seconds moment) { return h.from < moment; });
  while (hang != hangs.begin()) {
    --hang;
    if (hang->element != run.element || hang->row != run.row) continue;
    return hang->to.value_or(end) >= end ? &*hang : nullptr;
  }
  return nullptr;
}

// Whether a row hung with some of its motors only has concrete under none of those.
bool hung_off_concrete(const Look& look, const RunState& run) {
  const Element& element = look.plan().elements[run.element];
  const Row& row = element.rows[run.row];
  const Seconds end = look.run_end(run);
  const HangState* hung = hung_at(look.state, run, end);
  if (hung == nullptr) return false;
  if (std::find(hung->places.begin(), hung->places.end(), false) == hung->places.end()) {
    return false;
  }
  for (std::size_t i = 0; i < row.motors.size(); ++i) {
    const Motor& motor = row.motors[i];
    if (!hung->places[i]) continue;
    for (std::size_t bay = 0; bay < element.bays.size(); ++bay) {
      const Length start = element.bay_start(bay);
      if (!reaches(motor, start, start + element.bays[bay])) continue;
      const Length top = look.state.elements[run.element].tops[bay].at(end);
      if (top > lowest_reached(element, row, motor)) return false;
    }
  }
  return true;
}

void look_row_empty(const Look& look, const Rule& rule, Findings& out) {
  for (const std::size_t r : look.runs_at_issue) {
    const RunReport& report = look.runs[r];
    const RunState& run = look.state.runs[r];
    if (report.in_concrete && !hung_off_concrete(look, run)) continue;
    const Row& row = look.state.row_of(run);
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = row.side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.ref = run.ref;
    f.sentence = said("{element} row {row} ({side} side) ran with no concrete in its reach");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kRowEmpty{
    {"row-empty", said("Row ran with no concrete"), Severity::mend, Cost::face,
     "a row run against an empty form: ties and clamps work loose, the time is not "
     "vibration of concrete",
     said("common practice, no source"), "some concrete in reach by the end of the run",
     "nobody; it follows from the plan's reach",
     said("Rest the row; check ties, clamps and safety cables before it runs again")},
    look_row_empty};

}  // namespace rb
