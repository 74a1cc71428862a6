// run-long: a row ran longer than the band for a lift. A note: a spot's dose is judged apart.
#include "check/row_time.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

void look_run_long(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.dose_max;
  for_rows_of_lifts(look, [&](const LiftReport& report, std::size_t row, Seconds ran) {
    if (judge_band(ran, look.plan().limits) != BandVerdict::past) return;
    out.push_back(row_time_finding(look, rule, report, row, ran, limit));
  });
}

}  // namespace

extern const Rule kRunLong{
    {"run-long", said("Row ran long"), Severity::note, "a row left running past its band",
     said("common practice, no source"), "dose_max_s 120 s", "plan, by the engineer",
     said("Rest the row at the end of its band; look for streaks when stripped")},
    look_run_long};

}  // namespace rb
