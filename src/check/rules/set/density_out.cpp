// density-out: a tested density is off the planned one by more than the plan tolerates.
#include "check/rule.h"
#include "check/tested_mix.h"

namespace rb {

namespace {

void look_density_out(const Look& look, const Rule& rule, Findings& out) {
  for (const TestState& test : look.state.tests) {
    if (!test.what.density) continue;
    const Mix* mix = tested_mix(look.state, test);
    if (mix == nullptr || !mix->density || !mix->density_tolerance) continue;
    const bool heavy = *test.what.density > *mix->density;
    const MassPerVolume limit =
        heavy ? *mix->density + *mix->density_tolerance : *mix->density - *mix->density_tolerance;
    if (heavy ? !over(*test.what.density, limit) : !under(*test.what.density, limit)) continue;
    Finding f = found(rule);
    f.ticket = test.what.ticket;
    f.element = tested_element(look.state, test);
    f.from = f.to = test.at;
    f.measured = amount(*test.what.density);
    f.limit = amount(limit);
    f.source = limit_source(rule, LimitFrom::plan);
    f.ref = test.ref;
    f.sentence =
        heavy ? said("ticket {ticket}: density {measured}, planned {planned}, at most {limit}")
              : said("ticket {ticket}: density {measured}, planned {planned}, at least {limit}");
    f.facts = {{"planned", amount(*mix->density)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kDensityOut{
    {"density-out", said("Density out"), Severity::mend, Cost::lasting,
     "a load of another yield: too much air or water, or heavier on the form than reckoned",
     said("the plan's density and density_tol"),
     "planned density, give or take density_tol; none "
     "where the plan gives no tolerance",
     "plan, by the engineer",
     said("Weigh a new sample; compare air, slump and yield; a heavier load presses harder on the "
          "form")},
    look_density_out};

}  // namespace rb
