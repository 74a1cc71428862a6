// cure-short: curing was ended before it had lasted as long as planned.
#include <algorithm>

#include "check/after_pour.h"
#include "check/rule.h"
#include "pour/outlook/hardening.h"

namespace rb {

namespace {

// When the last curing of an element ended; none: it goes on, or there was none.
std::optional<Seconds> curing_ended(const PourState& state, std::size_t element) {
  std::optional<Seconds> ended;
  for (const CureState& cure : state.cures) {
    if (cure.element == element) ended = cure.to;
  }
  return ended;
}

void look_cure_short(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    const auto wanted = look.plan().elements[e].cure_for;
    const auto came = wanted && all_in(look, e) ? last_concrete(look.state, e) : std::nullopt;
    const auto ended = came ? curing_ended(look.state, e) : std::nullopt;
    if (!ended || !curing_begun(look.state, e, *came)) continue;
    const Seconds cured = cured_for(look.state, e, *came, *ended);
    if (!under(cured, *wanted)) continue;
    Finding f = found(rule);
    f.element = e;
    f.from = *came;
    f.to = *ended;
    f.measured = amount(cured, Measure::any_span);
    f.limit = amount(*wanted, Measure::any_span);
    f.source = {.code = Source::Code::plan, .field = "cure_for_s"};
    f.sentence = said("{element}: cured {measured} in all; planned {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kCureShort{
    {"cure-short", said("Cured too short"), Severity::mend, Cost::lasting,
     "a surface that dries out: cracks, dust, and strength it never gets",
     said("the plan's; without one it is not judged (our own choice). Breaks do not count"),
     "cure_for_s of the element; none by default", "plan, by the engineer",
     said("Go on curing, and ask the engineer what the days missed are worth")},
    look_cure_short};

}  // namespace rb
