// air-out: a tested air content is off the planned one by more than is tolerated.
#include <algorithm>

#include "check/rule.h"
#include "check/tested_mix.h"

namespace rb {

namespace {

constexpr double kTolerance = 1.5;  // points; ASTM C94 (from memory)

void look_air_out(const Look& look, const Rule& rule, Findings& out) {
  for (const TestState& test : look.state.tests) {
    if (!test.what.air) continue;
    const Mix* mix = tested_mix(look.state, test);
    if (mix == nullptr || !mix->air) continue;
    const double tolerance = mix->air_tolerance.value_or(kTolerance);
    const bool much = *test.what.air > *mix->air;
    const double limit = much ? *mix->air + tolerance : std::max(0.0, *mix->air - tolerance);
    if (much ? !over(*test.what.air, limit) : !under(*test.what.air, limit)) continue;
    Finding f = found(rule);
    f.ticket = test.what.ticket;
    f.element = tested_element(look.state, test);
    f.from = f.to = test.at;
    f.measured = Amount{Measure::percent, *test.what.air};
    f.limit = Amount{Measure::percent, limit};
    f.source = limit_source(rule, mix->air_tolerance ? LimitFrom::plan : LimitFrom::standard);
    f.ref = test.ref;
    f.sentence = much
                     ? said("ticket {ticket}: air {measured}, planned {planned}, at most {limit}")
                     : said("ticket {ticket}: air {measured}, planned {planned}, at least {limit}");
    f.facts = {{"planned", Amount{Measure::percent, *mix->air}}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kAirOut{
    {"air-out", said("Air content out"), Severity::mend, Cost::lasting,
     "concrete that frost will scale (too little air) or that is weak (too much)",
     said("ASTM C94 (from memory): give or take 1.5 points of the air planned"),
     "planned air, give or take air_tol or 1.5 points; none where no air is planned",
     "plan, by the engineer",
     said("Test the air again on a new sample; ask the inspector before placing more of it")},
    look_air_out};

}  // namespace rb
