#include "check/check.h"

#include <algorithm>
#include <tuple>

#include "check/causes.h"

namespace rb {

bool CheckReport::clean() const {
  return std::all_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.severity == Severity::note; });
}

namespace {

// By severity, then time. A finding is large: places are sorted, and each is moved once.
std::vector<Finding> in_order(std::vector<Finding> findings) {
  std::vector<std::tuple<Severity, Seconds, std::size_t>> places;
  places.reserve(findings.size());
  for (const Finding& f : findings) {
    places.emplace_back(f.severity, f.from.value_or(Seconds{-1e12}), places.size());
  }
  std::sort(places.begin(), places.end());
  std::vector<Finding> sorted;
  sorted.reserve(findings.size());
  for (const auto& place : places) sorted.push_back(std::move(findings[std::get<2>(place)]));
  return sorted;
}

}  // namespace

CheckReport check(const PourState& state, AsOf asof) {
  CheckMemory memory;
  return check(state, asof, memory);
}

CheckReport check(const PourState& state, AsOf asof, CheckMemory& memory) {
  Look look = look_at(state, asof, memory);
  CheckReport report{asof, {}, {}, {}, not_judged(state)};
  for (const Rule* rule : rules()) rule->look(look, *rule, report.findings);
  tell_causes(look, report.findings);
  settle(look, memory, report.findings);
  report.findings = in_order(std::move(report.findings));
  report.lifts = std::move(look.lifts);
  report.runs = std::move(look.runs);
  return report;
}

}  // namespace rb
