// The seconds of a row for a lift: its running time from the lift's start to the next lift's start.
// Shared by run-short, run-long and row-missed. Inside this room.
#pragma once

#include "check/rule.h"

namespace rb {

/// Calls `visit(report, row index, seconds)` for every lift and every row that serves it.
template <class Visit>
void for_rows_of_lifts(const Look& look, Visit visit) {
  for (const LiftReport& report : look.lifts) {
    const auto& rows = look.element(report).rows;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      for (const int served : rows[r].serves) {
        if (served != report.lift) continue;
        const Seconds until = look.lift(report).next_start.value_or(look.asof.at);
        visit(report, r, look.ran[report.element][r].time().within(report.placed_from, until));
        break;
      }
    }
  }
}

/// How long it ran in a span of time, slow seconds whole.
Seconds by_the_clock(const trade::Running& running, Seconds from, Seconds to);

/// A finding of a rule about a row's seconds for a lift.
Finding row_time_finding(const Look& look, const Rule& rule, const LiftReport& report,
                         std::size_t row, Seconds ran, const Limit<Seconds>& limit);

}  // namespace rb
