// slump-out: a tested slump is off the planned one by more than is tolerated.
#include <algorithm>

#include "check/rule.h"
#include "check/tested_mix.h"

namespace rb {

namespace {

// ASTM C94 (from memory): give or take 25 mm up to 100 mm planned, 38 mm (1 1/2 in) above.
constexpr Length kStiff = metres(0.1);
constexpr Length kStiffTolerance = metres(0.025);
constexpr Length kSoftTolerance = metres(0.038);

Length tolerance(const Mix& mix) {
  return mix.slump_tolerance.value_or(mix.slump <= kStiff ? kStiffTolerance : kSoftTolerance);
}

void look_slump_out(const Look& look, const Rule& rule, Findings& out) {
  for (const TestState& test : look.state.tests) {
    if (!test.what.slump) continue;
    const Mix* mix = tested_mix(look.state, test);
    if (mix == nullptr) continue;
    const bool wet = *test.what.slump > mix->slump;
    const Length limit = std::max(Length{}, mix->slump + tolerance(*mix) * (wet ? 1.0 : -1.0));
    if (wet ? !over(*test.what.slump, limit) : !under(*test.what.slump, limit)) continue;
    Finding f = found(rule);
    f.ticket = test.what.ticket;
    f.element = tested_element(look.state, test);
    f.from = f.to = test.at;
    f.measured = Amount{Measure::small_length, in_metres(*test.what.slump)};
    f.limit = Amount{Measure::small_length, in_metres(limit)};
    f.source = limit_source(rule, mix->slump_tolerance ? LimitFrom::plan : LimitFrom::standard);
    f.ref = test.ref;
    f.sentence =
        wet ? said("ticket {ticket}: slump {measured}, planned {planned}, at most {limit}")
            : said("ticket {ticket}: slump {measured}, planned {planned}, at least {limit}");
    f.facts = {{"planned", Amount{Measure::small_length, in_metres(mix->slump)}}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kSlumpOut{
    {"slump-out", said("Slump out"), Severity::mend, Cost::lasting,
     "concrete too wet (form pressure, segregation) or too stiff (honeycomb)",
     said("ASTM C94 (from memory): give or take {25 mm} up to {100 mm} planned, {38 mm} above"),
     "planned slump, give or take slump_tol, else 25 mm up to 100 mm, 38 mm above",
     "plan, by the engineer",
     said("Ask the inspector before placing more of it; a wet load presses harder on the form, a "
          "stiff one needs longer vibration")},
    look_slump_out};

}  // namespace rb
