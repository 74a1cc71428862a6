// clock-step: the tablet's wall clock was set while the pour was logged.
#include "check/rule.h"

namespace rb {

namespace {

void look_clock_step(const Look& look, const Rule& rule, Findings& out) {
  for (const ClockStep& step : look.state.clock_steps) {
    Finding f = found(rule);
    f.from = f.to = step.at;
    f.measured = amount(step.step);
    f.limit = amount(Seconds{2});
    f.ref = step.ref;
    f.sentence = said("the wall clock stepped by {measured+}; times after it are put back by that");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kClockStep{
    {"clock-step", said("Tablet clock was changed"), Severity::note, Cost::paper,
     "durations and order spoilt by a clock being set", said("common practice, no source"),
     "2 s between the wall and the steady clock", "nobody",
     said("Note the true time beside the record; keep the clock as it is")},
    look_clock_step};

}  // namespace rb
