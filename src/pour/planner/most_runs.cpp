#include "pour/planner/most_runs.h"

#include <algorithm>

namespace rb {

namespace {

constexpr Length kEdge = millimetres(1);  // at the edge of reach is within it

double runs_at(const trade::Sizing& sized, Length z) {
  const auto lift = std::lower_bound(sized.lifts.begin(), sized.lifts.end(), z - kEdge);
  const int from = static_cast<int>(lift - sized.lifts.begin()) + 1;
  double runs = 0;
  for (const trade::SizedRow& row : sized.rows) {
    if (z < row.low - kEdge || z > row.high + kEdge) continue;
    runs += static_cast<double>(std::count_if(row.lifts.begin(), row.lifts.end(),
                                              [from](int served) { return served >= from; }));
  }
  return runs;
}

}  // namespace

double most_runs(const trade::Sizing& sized) {
  double most = 1;
  Length bottom;
  for (const Length& top : sized.lifts) {
    for (const trade::SizedRow& at : sized.rows) {
      for (const Length& z : {std::max(bottom, at.low), std::min(top, at.high)}) {
        if (z >= bottom && z <= top) most = std::max(most, runs_at(sized, z));
      }
    }
    bottom = top;
  }
  return most;
}

}  // namespace rb
