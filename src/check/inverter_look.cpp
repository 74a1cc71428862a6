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

// Starts and ends of motors of one inverter, by where they hang.
std::vector<Change> changes_of(const Look& look, const Inverter& inverter) {
  std::vector<Change> changes;
  for (std::size_t e = 0; e < look.plan().elements.size(); ++e) {
    const auto& rows = look.plan().elements[e].rows;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const auto shaken = shaking(look.state, e, r, look.asof.at);
      for (std::size_t i = 0; i < shaken.size(); ++i) {
        if (!feeds(inverter, rows[r].motors[i].id)) continue;
        for (const trade::Interval& span : shaken[i]) {
          changes.push_back({span.from, +1});
          changes.push_back({span.to, -1});
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
      if (running > static_cast<int>(most.motors)) {
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
