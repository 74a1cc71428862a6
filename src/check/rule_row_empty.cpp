// row-empty: a row ran with no concrete in its reach.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

// The largest depth of concrete above the row's lower reach at the end of its run.
bool reached_nothing(const Look& look, const RunState& run) {
  const Element& element = look.plan().elements[run.element];
  const Row& row = element.rows[run.row];
  const Seconds end = look.run_end(run);
  for (const Motor& motor : row.motors) {
    for (std::size_t bay = 0; bay < element.bays.size(); ++bay) {
      const Length start = element.bay_start(bay);
      if (motor.x + motor.reach_x <= start ||
          motor.x - motor.reach_x >= start + element.bays[bay]) {
        continue;
      }
      const Length top = look.state.elements[run.element].tops[bay].at(end);
      if (top > Length{} && top > row.z - motor.reach_z) return false;
    }
  }
  return true;
}

void look_row_empty(const Look& look, const Rule& rule, Findings& out) {
  for (const RunState& run : look.state.runs) {
    if (!reached_nothing(look, run)) continue;
    const Row& row = look.state.row_of(run);
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = row.side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.ref = run.ref;
    f.says = fmt::format("{} row {} ({} side) ran with no concrete in its reach",
                         look.plan().elements[run.element].id.text, row.id.text, to_text(row.side));
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kRowEmpty{
    {"row-empty", Weight::mend,
     "a row run against an empty form: ties and clamps work loose, the time is not "
     "vibration of concrete",
     "common practice, no source", "some concrete in reach by the end of the run",
     "nobody; it follows from the plan's reach",
     "Rest the row; check ties, clamps and safety cables before it runs again"},
    look_row_empty};

}  // namespace rb
