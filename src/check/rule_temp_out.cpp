// temp-out: concrete was measured too cold or too warm.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

void look_temp_out(const Look& look, const Rule& rule, Findings& out) {
  const Limits& limits = look.plan().limits;
  for (const TestState& test : look.state.tests) {
    if (!test.what.temp) continue;
    const bool cold = *test.what.temp < limits.temp_min.value;
    if (!cold && *test.what.temp <= limits.temp_max.value) continue;
    const auto& limit = cold ? limits.temp_min : limits.temp_max;
    Finding f = found(rule);
    f.ticket = test.what.ticket;
    f.from = f.to = test.at;
    f.measured = test.what.temp->degrees;
    f.limit = limit.value.degrees;
    f.unit = "degC";
    f.source = limit_source(rule, limit.from);
    f.ref = test.ref;
    f.says = fmt::format("ticket {}: concrete at {:.1f} degC, {} {:.1f} degC",
                         test.what.ticket.text, *f.measured, cold ? "below" : "above", *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kTempOut{{"temp-out", Weight::mend, "frost or flash setting before it is worked",
                     "ACI 306 (at least 10 degC placed, sections of 12 to 36 in) and ACI 301 (at "
                     "most 35 degC)",
                     "temp_min 10 degC, temp_max 35 degC", "plan, by the engineer",
                     "Ask the inspector before placing it; mind the knit clock"},
                    look_temp_out};

}  // namespace rb
