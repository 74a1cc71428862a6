#include "check/row_time.h"

#include <fmt/format.h>

namespace rb {

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
  f.measured = in_seconds(ran);
  f.limit = in_seconds(limit.value);
  f.unit = "s";
  f.source = limit_source(rule, limit.from);
  f.ref = look.lift(report).ref;
  f.says = fmt::format("{} lift {}, row {} ({} side): ran {:.0f} s, limit {:g} s",
                       look.element(report).id.text, report.lift, planned.id.text,
                       to_text(planned.side), *f.measured, *f.limit);
  return f;
}

}  // namespace rb
