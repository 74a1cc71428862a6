#include "screens/alarm.h"

#include <fmt/format.h>

namespace rb::screens {

namespace {

// What a finding is about, without its figures and times: those change while it stands.
std::string subject(const Finding& f) {
  const auto number = [](const auto& value) {
    return value ? fmt::format("{}", static_cast<long>(*value)) : std::string("-");
  };
  return fmt::format("{} {} {} {} {} {}", f.rule, number(f.element), number(f.lift), number(f.bay),
                     number(f.side), number(f.row));
}

}  // namespace

std::optional<Weight> Alarm::hear(const PourId& pour, const std::vector<Finding>& attention) {
  std::set<std::string> now;
  std::optional<Weight> worst;
  const bool first = pour_ != pour;
  for (const Finding& finding : attention) {
    if (finding.weight == Weight::note) continue;
    std::string what = subject(finding);
    const bool fresh = known_.count(what) == 0;
    now.insert(std::move(what));
    if (first || !fresh || worst == Weight::stop) continue;
    worst = finding.weight;
  }
  known_ = std::move(now);
  pour_ = pour;
  return worst;
}

}  // namespace rb::screens
