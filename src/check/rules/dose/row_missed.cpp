// row-missed: a row that serves a lift did not run for it at all.
#include "check/row_time.h"
#include "check/vibrated.h"

namespace rb {

namespace {

void look_row_missed(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.dose_min;
  for_rows_of_lifts(look, [&](const LiftReport& report, std::size_t row, Seconds ran) {
    if (ran > Seconds{} || !look.settled(report) || bare_bays(look, report).all) return;
    out.push_back(row_time_finding(look, rule, report, row, ran, limit));
  });
}

}  // namespace

extern const Rule kRowMissed{
    {"row-missed", said("Row never ran"), Severity::mend,
     "a row of the run sheet that was forgotten", said("the plan's run sheet (rows[].serves)"),
     "each row runs for each lift it serves", "plan, by the engineer",
     said("Run it now if its concrete is still plastic and the head on it allows; else "
          "mark the place to be inspected when stripped")},
    look_row_missed};

}  // namespace rb
