// What a row works on, reckoned here from the plan and the tops alone, spot by spot: what the
// program says of RUN is held to it.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "pour/log/state.h"
#include "pour/outlook/set_clock.h"

namespace rb {

struct RowTruth {
  bool hung = false;        ///< with a motor at least
  bool concrete = false;    ///< where its motors work, in some bay
  bool fresh = false;       ///< some of it has not set, as early as it may
  bool last_fresh = false;  ///< what came last has not, in some bay
  bool served = false;
  bool moved = false;  ///< the pour is on hold, and something moved in it
  [[nodiscard]] bool may_run() const { return hung && concrete && fresh && !moved; }
};

inline RowTruth row_truth(const PourState& state, std::size_t element, std::size_t row,
                          Seconds now) {
  const Element& e = state.plan->elements[element];
  const Row& r = e.rows[row];
  const double aslant = std::cos(e.batter_deg * std::numbers::pi / 180.0);
  const auto steps = set_steps(state, element, SetSide::early);
  const HangState* hang = state.hanging(element, row);
  RowTruth truth;
  for (std::size_t m = 0; hang != nullptr && m < r.motors.size(); ++m) {
    truth.hung = truth.hung || hang->places[m];
  }
  const auto plastic = [&](const trade::TopCurve& top, double z) {
    // Rounding must not put the spot over what stands.
    const auto came = top.reached(std::min(metres(z), top.at(now)));
    return came && trade::sets_at(steps, *came) > now;
  };
  std::vector<double> highest(e.bays.size(), -1);  // worked on in a bay
  for (std::size_t m = 0; m < r.motors.size(); ++m) {
    if (truth.hung && !hang->places[m]) continue;
    const double x = in_metres(r.motors[m].x);
    const double reach_x = in_metres(r.motors[m].reach_x);
    const double reach_z = in_metres(r.motors[m].reach_z) * aslant;
    const double low = std::max(0.0, in_metres(r.z) - reach_z);
    double left = 0;
    for (std::size_t bay = 0; bay < e.bays.size(); ++bay) {
      const double right = left + in_metres(e.bays[bay]);
      const bool here = x + reach_x > left + 1e-6 && x - reach_x < right - 1e-6;
      left = right;
      const trade::TopCurve& top = state.elements[element].tops[bay];
      const double high = std::min(in_metres(top.at(now)), in_metres(r.z) + reach_z);
      if (!here || high <= low + 1e-6) continue;
      truth.concrete = true;
      highest[bay] = std::max(highest[bay], high);
      constexpr int kSpots = 40;
      for (int i = 1; i <= kSpots; ++i) {
        truth.fresh = truth.fresh || plastic(top, low + (high - low) * i / kSpots);
      }
    }
  }
  for (std::size_t bay = 0; bay < e.bays.size(); ++bay) {
    if (highest[bay] < 0) continue;
    const bool last = plastic(state.elements[element].tops[bay], highest[bay]);
    truth.last_fresh = truth.last_fresh || last;
  }
  const auto& lifts = state.elements[element].lifts;
  const int lift = lifts.empty() ? 1 : lifts.back().lift;
  truth.served = std::count(r.serves.begin(), r.serves.end(), lift) > 0;
  if (!state.holds.empty() && !state.holds.back().to) {
    for (const MovedState& moved : state.moved) {
      truth.moved = truth.moved || moved.at >= state.holds.back().from;
    }
  }
  return truth;
}

}  // namespace rb
