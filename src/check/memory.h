// What CheckMemory holds. Inside this room.
#pragma once

#include <memory>
#include <vector>

#include "check/check.h"
#include "check/lift_look.h"

namespace rb {

/// A run's head, good as long as the tops of its element up to its end are the same.
struct KnownHead {
  std::size_t element = 0, row = 0;
  Seconds end{};
  RunReport report;
};

struct ElementMemory {
  std::vector<std::unique_ptr<LiftLook>> lifts;       // one a lift, and first what lies below
  std::vector<std::vector<BayReached>> bays_of_rows;  // of the plan
  std::vector<trade::TopCurve> tops;                  // as they were
};

struct CheckMemory::Inside {
  std::shared_ptr<const Plan> plan;
  std::vector<ElementMemory> elements;
  std::vector<KnownHead> heads;  // as PourState::runs
};

}  // namespace rb
