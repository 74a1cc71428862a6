// temp-out: concrete was measured too cold or too warm.
#include "check/rule.h"
#include "check/tested_mix.h"

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
    f.element = tested_element(look.state, test);
    f.from = f.to = test.at;
    f.measured = amount(*test.what.temp);
    f.limit = amount(limit.value);
    f.source = limit_source(rule, limit.from);
    f.ref = test.ref;
    f.sentence = cold ? said("ticket {ticket}: concrete at {measured}, below {limit}")
                      : said("ticket {ticket}: concrete at {measured}, above {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kTempOut{
    {"temp-out", said("Concrete temperature out"), Severity::mend, Cost::lasting,
     "frost or flash setting before it is worked",
     said("ACI 306 (at least {10 degC} placed, sections of {304.8 mm} to {914.4 mm}) and ACI "
          "301 (at most {35 degC})"),
     "temp_min 10 degC, temp_max 35 degC", "plan, by the engineer",
     said("Ask the inspector before placing it; mind the knit clock")},
    look_temp_out};

}  // namespace rb
