// from-script: lines of a script in a pour that was tapped as well.
#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/log/origin.h"

namespace rb {

namespace {

void look_from_script(const Look& look, const Rule& rule, Findings& out) {
  const Origin origin = origin_of(look.state);
  if (!origin.mixed()) return;
  Finding f = found(rule);
  for (EventRef ref = 0; ref < look.state.log.size(); ++ref) {
    if (!brought_in(look.state, ref)) continue;
    const Seconds at = look.state.clock(look.state.log[ref].when);
    if (!f.ref) f.ref = ref;
    if (!f.from || at < *f.from) f.from = at;
    if (!f.to || at > *f.to) f.to = at;
  }
  f.facts = {{"brought", count(static_cast<double>(origin.brought))},
             {"all", count(static_cast<double>(origin.brought + origin.tapped))}};
  f.sentence =
      said("{brought} of {all} events were brought in from a script; the others were tapped");
  out.push_back(std::move(f));
}

}  // namespace

extern const Rule kFromScript{
    {"from-script", said("Part of it from a script"), Severity::note, Cost::paper,
     "lines written elsewhere taken for taps on the form", said("choice of this project"),
     "none in a pour that was tapped; a pour replayed whole has none", "nobody",
     said("Hold the lines from the script against whoever wrote them")},
    look_from_script};

}  // namespace rb
