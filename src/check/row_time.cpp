#include "check/row_time.h"

namespace rb {

Seconds by_the_clock(const trade::Running& running, Seconds from, Seconds to) {
  Seconds sum{};
  for (const trade::Interval& span : running.clipped(from, to)) sum += span.to - span.from;
  return sum;
}

Finding row_time_finding(const Look& look, const Rule& rule, const LiftReport& report,
                         std::size_t row, Seconds ran, const Limit<Seconds>& limit) {
  const Row& planned = look.element(report).rows[row];
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.row = row;
  f.side = planned.side;
  f.from = report.placed_from;
  f.to = look.lift(report).next_start.value_or(look.asof.at);
  f.measured = amount(ran);
  f.limit = amount(limit.value);
  f.source = limit_source(rule, limit.from);
  f.ref = look.lift(report).ref;
  f.sentence =
      said("{element} lift {lift}, row {row} ({side} side): ran {measured}, limit {limit}");
  return f;
}

}  // namespace rb
