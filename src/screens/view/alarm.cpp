#include "screens/view/alarm.h"

#include <fmt/format.h>

#include <algorithm>

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

bool lately(std::optional<Seconds> moment, Seconds now) {
  return moment && now - *moment <= kAttention;
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

std::vector<Finding> Alarm::attention(const PourId& pour, const std::vector<Finding>& findings,
                                      Seconds now) {
  const bool first = seen_in_ != pour;
  std::map<std::string, std::optional<Seconds>> seen;
  std::vector<Finding> found;
  for (const Finding& f : findings) {
    if (f.severity == Severity::note) continue;
    // Of two runs of one row each is news.
    std::string what = subject(f) + (f.from ? fmt::format(" {:.0f}", f.from->count()) : "");
    const auto before = seen_.find(what);
    std::optional<Seconds> since;
    if (!first) since = before == seen_.end() ? now : before->second;
    if (!last_true(f) || lately(last_true(f), now) || lately(since, now)) found.push_back(f);
    seen.emplace(std::move(what), since);
  }
  seen_ = std::move(seen);
  seen_in_ = pour;
  order_by_harm(found);
  return found;
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
