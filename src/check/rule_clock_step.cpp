// clock-step: the tablet's wall clock was set while the pour was logged.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

void look_clock_step(const Look& look, const Rule& rule, Findings& out) {
  for (const ClockStep& step : look.state.clock_steps) {
    Finding f = found(rule);
    f.from = f.to = step.at;
    f.measured = in_seconds(step.step);
    f.limit = 2;
    f.unit = "s";
    f.ref = step.ref;
    f.says = fmt::format("the wall clock stepped by {:+.1f} s; times after it are put back by that",
                         *f.measured);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kClockStep{
    {"clock-step", Weight::note, "durations and order spoilt by a clock being set",
     "common practice, no source", "2 s between the wall and the steady clock", "nobody",
     "Note the true time beside the record; keep the clock as it is"},
    look_clock_step};

}  // namespace rb
