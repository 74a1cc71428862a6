#include "check/inverter_look.h"

#include <algorithm>

#include "check/memory.h"

namespace rb {

namespace {

struct Change {
  Seconds at{};
  int more = 0;
};

// Starts and ends from a moment on of motors of one inverter, those of a row that shook alike
// together.
std::vector<Change> changes_of(const Look& look, const Inverter& inverter, Seconds since) {
  std::vector<Change> changes;
  for (std::size_t e = 0; e < look.plan().elements.size(); ++e) {
    const auto& rows = look.plan().elements[e].rows;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      std::vector<std::pair<trade::Running, int>> fed;
      for (std::size_t i = 0; i < rows[r].motors.size(); ++i) {
        if (!feeds(inverter, rows[r].motors[i].id)) continue;
        const trade::Running& running = look.drew[e][r][i];
        if (fed.empty() || !fed.back().first.shares(running)) fed.emplace_back(running, 0);
        ++fed.back().second;
      }
      for (const auto& [running, motors] : fed) {
        const auto& spans = running.spans();
        auto span = std::lower_bound(spans.begin(), spans.end(), since,
                                     [](const trade::Interval& s, Seconds m) { return s.to < m; });
        for (; span != spans.end(); ++span) {
          if (span->from >= since) changes.push_back({span->from, +motors});
          changes.push_back({span->to, -motors});
        }
      }
    }
  }
  std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) {
    return a.at != b.at ? a.at < b.at : a.more < b.more;
  });
  return changes;
}

void count_in(InverterMemory& now, std::size_t inverter, const Change& change) {
  if (!now.most_ended) now.most.to = change.at;
  now.most_ended = true;
  now.running += change.more;
  const int least = static_cast<int>(now.most.motors) + (now.live ? 0 : 1);
  if (now.running <= 0 || now.running < least) return;
  now.most = {inverter, change.at, {}, static_cast<std::size_t>(now.running)};
  now.most_ended = false;
}

}  // namespace

std::vector<InverterMoment> busiest(const Look& look) {
  std::vector<InverterMoment> all;
  look.inverters->resize(look.plan().power.size());
  for (std::size_t i = 0; i < look.plan().power.size(); ++i) {
    InverterMemory& known = (*look.inverters)[i];
    if (known.live != look.asof.live) known = {};
    known.live = look.asof.live;
    InverterMemory now = known;
    for (const Change& change : changes_of(look, look.plan().power[i], known.until)) {
      if (change.at >= look.state.last && known.until < look.state.last) {
        known = now;
        known.until = look.state.last;
      }
      count_in(now, i, change);
    }
    if (known.until < look.state.last) {
      known = now;
      known.until = look.state.last;
    }
    if (!now.most_ended) now.most.to = look.asof.at;
    if (now.most.motors > 0) all.push_back(now.most);
  }
  return all;
}

Current drawn(const Plan& plan, std::size_t motors) {
  return plan.motor_type ? plan.motor_type->amps * static_cast<double>(motors) : Current{};
}

}  // namespace rb
