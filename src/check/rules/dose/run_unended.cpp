// run-unended: a run nobody ended.
#include "check/rule.h"

namespace rb {

namespace {

constexpr double kForgotten = 3;  // times the band: by then a live run is taken for forgotten

void look_run_unended(const Look& look, const Rule& rule, Findings& out) {
  const Seconds band = look.plan().limits.dose_max.value;
  for (const std::size_t r : look.runs_at_issue) {
    const RunState& run = look.state.runs[r];
    if (run.rest) continue;
    const Seconds ran = look.run_end(run) - run.from;
    if (look.asof.live && !look.state.closed && !run.to && ran <= band * kForgotten) continue;
    const Row& row = look.state.row_of(run);
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = row.side;
    f.from = run.from;
    if (look.asof.live && !run.to) f.to = look.asof.at;  // it is still so
    f.measured = amount(ran);
    f.ref = run.ref;
    f.sentence =
        run.to ? said("{element} row {row}: no rest was logged; {measured} up to its take-down")
               : said("{element} row {row}: no rest was logged; {measured} up to the last event");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kRunUnended{
    {"run-unended", said("Run without an end"), Severity::mend, Cost::face,
     "a row left running, or a rest nobody tapped: the dose is not known",
     said("common practice, no source"), "every run has its rest", "nobody",
     said("Rest the row; if it was rested, enter the rest with its true time")},
    look_run_unended};

}  // namespace rb
