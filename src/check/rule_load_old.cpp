// load-old: a load was discharged too long after batching.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

void look_load_old(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.load_age_max;
  for (const TruckState& truck : look.state.trucks) {
    if (!truck.what || !truck.discharged) continue;
    const Seconds batched = look.state.clock(truck.what->batched);
    const Seconds age = truck.ended.value_or(*truck.discharged) - batched;
    if (!over(age, limit.value)) continue;
    Finding f = found(rule);
    f.element = truck.element;
    f.from = batched;
    f.to = truck.ended.value_or(*truck.discharged);
    f.measured = in_seconds(age);
    f.limit = in_seconds(limit.value);
    f.unit = "s";
    f.source = limit_source(rule, limit.from);
    f.ref = truck.discharge;
    f.says = fmt::format("ticket {}: discharged {:.0f} min after batching, limit {:.0f} min",
                         truck.ticket.text, *f.measured / 60, *f.limit / 60);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kLoadOld{
    {"load-old", Weight::mend, "concrete that is stiffening before it is placed",
     "ASTM C94, 90 min until its 2021 edition left the figure to the purchaser",
     "load_age_max_s 5400 s, batching to end of discharge", "plan, by the purchaser",
     "Test slump and temperature; ask the inspector before placing more of it"},
    look_load_old};

}  // namespace rb
