#include "check/inverter_look.h"

#include <algorithm>

namespace rb {

namespace {

struct Change {
  Seconds at{};
  int more = 0;
};

bool feeds(const Inverter& inverter, const MotorId& motor) {
  return std::find(inverter.motors.begin(), inverter.motors.end(), motor) != inverter.motors.end();
}

// Starts and ends of motors of one inverter, those of a row that shook alike together.
std::vector<Change> changes_of(const Look& look, const Inverter& inverter) {
  std::vector<Change> changes;
  for (std::size_t e = 0; e < look.plan().elements.size(); ++e) {
    const auto& rows = look.plan().elements[e].rows;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      std::vector<std::pair<trade::Running, int>> fed;
      for (std::size_t i = 0; i < rows[r].motors.size(); ++i) {
        if (!feeds(inverter, rows[r].motors[i].id)) continue;
        const trade::Running& running = look.shaken[e][r][i];
        if (fed.empty() || !fed.back().first.shares(running)) fed.emplace_back(running, 0);
        ++fed.back().second;
      }
      for (const auto& [running, motors] : fed) {
        for (const trade::Interval& span : running) {
          changes.push_back({span.from, +motors});
          changes.push_back({span.to, -motors});
        }
      }
    }
  }
  std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) {
    return a.at != b.at ? a.at < b.at : a.more < b.more;
  });
  return changes;
}

}  // namespace

std::vector<InverterMoment> busiest(const Look& look) {
  std::vector<InverterMoment> all;
  for (std::size_t i = 0; i < look.plan().power.size(); ++i) {
    const std::vector<Change> changes = changes_of(look, look.plan().power[i]);
    InverterMoment most{i, {}, {}, 0};
    int running = 0;
    for (std::size_t c = 0; c < changes.size(); ++c) {
      running += changes[c].more;
      const int least = static_cast<int>(most.motors) + (look.asof.live ? 0 : 1);
      if (running > 0 && running >= least) {
        most = {i, changes[c].at, c + 1 < changes.size() ? changes[c + 1].at : look.asof.at,
                static_cast<std::size_t>(running)};
      }
    }
    if (most.motors > 0) all.push_back(most);
  }
  return all;
}

Current drawn(const Plan& plan, std::size_t motors) {
  return plan.motor_type ? plan.motor_type->amps * static_cast<double>(motors) : Current{};
}

}  // namespace rb
