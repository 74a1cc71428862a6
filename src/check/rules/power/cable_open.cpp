// cable-open: a row ran without its safety cables confirmed.
#include <algorithm>

#include "check/rule.h"

namespace rb {

namespace {

// Whether the row was hung anew while it ran, and not every cable confirmed.
bool hung_without(const PourState& state, const RunState& run, Seconds end) {
  const auto& hangs = state.hangs;  // in order of time
  auto hang = std::upper_bound(hangs.begin(), hangs.end(), run.from,
                               [](Seconds moment, const HangState& h) { return moment < h.from; });
  for (; hang != hangs.end() && hang->from < end; ++hang) {
    if (hang->element == run.element && hang->row == run.row && !hang->cables) return true;
  }
  return false;
}

void look_cable_open(const Look& look, const Rule& rule, Findings& out) {
  for (const std::size_t r : look.runs_at_issue) {
    const RunState& run = look.state.runs[r];
    if (run.cables && !hung_without(look.state, run, look.run_end(run))) continue;
    const Row& row = look.state.row_of(run);
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = row.side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.ref = run.ref;
    f.sentence = said(
        "{element} row {row} ({side} side) ran without a hang with every safety cable confirmed");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kCableOpen{
    {"cable-open", said("Ran without cables confirmed"), Severity::stop, Cost::perhaps,
     "a motor that shakes loose and falls on the crew below", said("common practice, no source"),
     "a hang with cables confirmed stands as long as a row runs", "nobody",
     said("Rest the row, keep clear below, fix every safety cable, then log the hang"),
     Harm::people},
    look_cable_open};

}  // namespace rb
