// run-long: a row ran longer than the band for a lift. A note: a spot's dose is judged apart.
#include <algorithm>

#include "check/row_time.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

// Of its motors, the one that ran longest for a lift: a row may run bay by bay, hung with those of
// the bay only.
Seconds longest(const Look& look, const LiftReport& report, std::size_t row) {
  const Seconds until = look.lift(report).next_start.value_or(look.asof.at);
  Seconds most{};
  const trade::Running* last = nullptr;  // motors of a row share one: asked once
  for (const trade::Running& motor : look.shaken[report.element][row]) {
    if (last != nullptr && last->shares(motor)) continue;
    last = &motor;
    most = std::max(most, motor.time().within(report.placed_from, until));
  }
  return most;
}

void look_run_long(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.dose_max;
  for_rows_of_lifts(look, [&](const LiftReport& report, std::size_t row, Seconds all) {
    if (judge_band(all, look.plan().limits) != BandVerdict::past) return;
    const Seconds ran = longest(look, report, row);
    if (judge_band(ran, look.plan().limits) != BandVerdict::past) return;
    out.push_back(row_time_finding(look, rule, report, row, ran, limit));
  });
}

}  // namespace

extern const Rule kRunLong{
    {"run-long", said("Row ran long"), Severity::note, Cost::face,
     "a row left running past its band", said("common practice, no source"), "dose_max_s 120 s",
     "plan, by the engineer",
     said("Rest the row at the end of its band; look for streaks when stripped")},
    look_run_long};

}  // namespace rb
