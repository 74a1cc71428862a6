#include "check/check.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <tuple>

#include "check/after_pour.h"
#include "check/causes.h"

namespace rb {

bool CheckReport::clean() const {
  return std::all_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.severity == Severity::note; });
}

namespace {

// What comes first, of causes and of the findings of one.
using Weight = std::tuple<Severity, int, Cost>;

Weight weight(const Finding& f) {
  const RuleCard* card = find_card(f.rule);
  const Harm harm = card == nullptr ? Harm::work : card->harm;
  return {f.severity, -static_cast<int>(harm), card == nullptr ? Cost::paper : card->cost};
}

// Of findings as grave what led to the others, then the earliest.
using Place = std::tuple<Weight, bool, Seconds, std::size_t>;

// A finding is large: places are sorted, and each is moved once.
std::vector<Finding> in_order(std::vector<Finding> findings) {
  std::map<std::string_view, std::vector<Place>> causes;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& f = findings[i];
    causes[f.group].emplace_back(weight(f), follows(f), f.from.value_or(Seconds{-1e12}), i);
  }
  std::vector<std::tuple<Weight, Seconds, const std::vector<Place>*>> order;
  for (auto& [group, places] : causes) {
    std::sort(places.begin(), places.end());
    order.emplace_back(std::get<Weight>(places.front()), std::get<Seconds>(places.front()),
                       &places);
  }
  // Of causes alike those named first: the map has them so.
  std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
    return std::tie(std::get<0>(a), std::get<1>(a)) < std::tie(std::get<0>(b), std::get<1>(b));
  });
  std::vector<Finding> sorted;
  sorted.reserve(findings.size());
  for (const auto& cause : order) {
    for (const Place& place : *std::get<2>(cause)) {
      sorted.push_back(std::move(findings[std::get<3>(place)]));
    }
  }
  return sorted;
}

}  // namespace

std::vector<std::span<const Finding>> by_cause(std::span<const Finding> findings) {
  std::vector<std::span<const Finding>> causes;
  for (std::size_t first = 0, past = 0; first < findings.size(); first = past) {
    const std::string& group = findings[first].group;
    do {
      ++past;
    } while (past < findings.size() && !group.empty() && findings[past].group == group);
    causes.push_back(findings.subspan(first, past - first));
  }
  return causes;
}

CheckReport check(const PourState& state, AsOf asof) {
  CheckMemory memory;
  return check(state, asof, memory);
}

CheckReport check(const PourState& state, AsOf asof, CheckMemory& memory) {
  Look look = look_at(state, asof, memory);
  CheckReport report{asof, {}, {}, {}, not_judged(state)};
  for (const Rule* rule : rules()) rule->look(look, *rule, report.findings);
  tell_after_pour(look, report.not_judged);
  tell_causes(look, report.findings);
  settle(look, memory, report.findings);
  report.findings = in_order(std::move(report.findings));
  report.lifts = std::move(look.lifts);
  report.runs = std::move(look.runs);
  report.power = std::move(look.power);
  report.generators = std::move(look.generators);
  return report;
}

}  // namespace rb
