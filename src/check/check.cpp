#include "check/check.h"

#include <algorithm>
#include <tuple>

#include "check/rule.h"

namespace rb {

bool CheckReport::clean() const {
  return std::all_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.weight == Weight::note; });
}

CheckReport check(const PourState& state, AsOf asof) {
  CheckMemory memory;
  return check(state, asof, memory);
}

CheckReport check(const PourState& state, AsOf asof, CheckMemory& memory) {
  Look look = look_at(state, asof, memory);
  CheckReport report{asof, {}, {}, {}};
  for (const Rule* rule : rules()) rule->look(look, *rule, report.findings);
  std::stable_sort(report.findings.begin(), report.findings.end(),
                   [](const Finding& a, const Finding& b) {
                     return std::tuple{a.weight, a.from.value_or(Seconds{-1e12})} <
                            std::tuple{b.weight, b.from.value_or(Seconds{-1e12})};
                   });
  report.lifts = std::move(look.lifts);
  report.runs = std::move(look.runs);
  return report;
}

}  // namespace rb
