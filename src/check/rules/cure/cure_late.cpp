// cure-late: curing was begun later after the last concrete than planned, or not at all.
#include "check/after_pour.h"
#include "check/rule.h"
#include "pour/outlook/hardening.h"

namespace rb {

namespace {

void look_cure_late(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    const auto within = look.plan().elements[e].cure_start_within;
    const auto came = within && all_in(look, e) ? last_concrete(look.state, e) : std::nullopt;
    if (!came) continue;
    const auto begun = curing_begun(look.state, e, *came);
    const Seconds waited = begun.value_or(look.asked.at) - *came;
    if (!over(waited, *within)) continue;
    Finding f = found(rule);
    f.element = e;
    f.from = *came + *within;
    f.to = begun;
    f.measured = amount(waited, Measure::any_span);
    f.growing = !begun;
    f.limit = amount(*within, Measure::any_span);
    f.source = {.code = Source::Code::plan, .field = "cure_start_within_s"};
    f.sentence = begun ? said(
                             "{element}: curing begun {measured} after its last concrete came; "
                             "planned within {limit}")
                       : said(
                             "{element}: no curing begun {measured} after its last concrete came; "
                             "planned within {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kCureLate{
    {"cure-late", said("Curing late"), Severity::mend, Cost::lasting,
     "a surface that dries out: cracks, dust, and strength it never gets",
     said("the plan's; without one it is not judged (our own choice)"),
     "cure_start_within_s of the element, from its last concrete; none by default",
     "plan, by the engineer", said("Begin curing now, and log how")},
    look_cure_late};

}  // namespace rb
