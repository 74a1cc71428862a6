#include "screens/view/alarm.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "check/check.h"

namespace rb::screens {

namespace {

// What a finding is about, without its figures and times: those change while it stands.
std::string subject(const Finding& f) {
  const auto number = [](const auto& value) {
    return value ? fmt::format("{}", static_cast<long>(*value)) : std::string("-");
  };
  return fmt::format("{} {} {} {} {} {} {}", f.rule, number(f.element), number(f.lift),
                     number(f.bay), number(f.side), number(f.row),
                     f.ticket     ? f.ticket->text
                     : f.inverter ? f.inverter->text
                                  : std::string{});
}

std::optional<Seconds> last_true(const Finding& f) {
  return f.to ? f.to : f.from;
}

// Of two runs of one row each is a finding of its own.
std::string one_of(const Finding& f) {
  return subject(f) + (f.from ? fmt::format(" {:.0f}", f.from->count()) : "");
}

// What has no time, a plan's fault, is so as long as it is told.
bool lately(const Finding& f, Seconds now, Seconds within) {
  const auto last = last_true(f);
  return !last || now - *last <= within;
}

void order_by_harm(std::vector<Finding>& found) {
  const auto harm = [](const Finding& f) {
    const RuleCard* card = find_card(f.rule);
    return card == nullptr ? Harm::work : card->harm;
  };
  std::stable_sort(found.begin(), found.end(), [&](const Finding& a, const Finding& b) {
    if (a.severity != b.severity) return a.severity < b.severity;
    if (harm(a) != harm(b)) return harm(a) > harm(b);
    const auto last = [](const Finding& f) { return last_true(f).value_or(Seconds{-1e18}); };
    return last(a) > last(b);
  });
}

}  // namespace

Attention Alarm::attention(const PourId& pour, const std::vector<Finding>& findings, Seconds now,
                           const std::set<std::string>& accepted) {
  const bool first = seen_in_ != pour;
  std::map<std::string, bool> seen;
  Attention found;
  std::vector<Finding> behind;
  for (const Finding& f : findings) {
    if (f.severity == Severity::note || accepted.count(f.group) > 0) continue;
    std::string what = one_of(f);
    const auto before = seen_.find(what);
    const bool looked_at =
        first ? !lately(f, now, kAttention) : before != seen_.end() && before->second;
    const bool loud = !looked_at || (f.severity == Severity::stop && lately(f, now, kStillTrue));
    (loud ? found.now : behind).push_back(f);
    seen.emplace(std::move(what), looked_at);
  }
  seen_ = std::move(seen);
  seen_in_ = pour;
  order_by_harm(found.now);
  if (!behind.empty()) {
    order_by_harm(behind);
    for (const Finding& f : behind) {
      ++(f.severity == Severity::stop ? found.behind.stops : found.behind.mends);
    }
    found.behind.gravest = behind.front();
  }
  return found;
}

bool Alarm::saw(const Finding& finding) {
  const auto known = seen_.find(one_of(finding));
  return known != seen_.end() && !std::exchange(known->second, true);
}

std::optional<Severity> Alarm::hear(const PourId& pour, const std::vector<Finding>& attention) {
  std::set<std::string> now;
  std::optional<Severity> worst;
  const bool first = heard_in_ != pour;
  for (const Finding& finding : attention) {
    if (finding.severity == Severity::note) continue;
    std::string what = subject(finding);
    const bool fresh = known_.count(what) == 0;
    now.insert(std::move(what));
    if (first || !fresh || worst == Severity::stop) continue;
    worst = finding.severity;
  }
  known_ = std::move(now);
  heard_in_ = pour;
  return worst;
}

}  // namespace rb::screens
