// run-short: a row that serves a lift ran for it, but not long enough.
#include "base/limits.h"
#include "check/row_time.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

void look_run_short(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.dose_min;
  for_rows_of_lifts(look, [&](const LiftReport& report, std::size_t row, Seconds ran) {
    if (judge_band(ran, look.plan().limits) != BandVerdict::short_of) return;
    if (!look.settled(report)) return;
    Finding f = row_time_finding(look, rule, report, row, ran, limit);
    const Seconds whole = by_the_clock(look.ran[report.element][row], *f.from, *f.to);
    if (over(whole, ran)) {
      f.sentence = said(
          "{element} lift {lift}, row {row} ({side} side): ran {whole}, so slowly that it "
          "counts {measured}, limit {limit}");
      f.facts.push_back({"whole", amount(whole)});
    }
    out.push_back(std::move(f));
  });
}

}  // namespace

extern const Rule kRunShort{
    {"run-short", said("Row ran too short"), Severity::mend, Cost::face, "a row rested too soon",
     said("common practice, no source"), "dose_min_s 90 s", "plan, by the engineer",
     said("Run the row again for the missing time while the concrete is plastic and "
          "the head on the row allows it")},
    look_run_short};

}  // namespace rb
