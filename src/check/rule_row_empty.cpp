// row-empty: a row ran with no concrete in its reach.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

void look_row_empty(const Look& look, const Rule& rule, Findings& out) {
  for (const RunReport& report : look.runs) {
    if (report.in_concrete) continue;
    const RunState& run = look.state.runs[report.run];
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
