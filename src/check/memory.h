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

/// Heights over which a row's motors work.
struct RowReach {
  Length low, high;
};

/// When a row ran and its places shook, good as long as its runs and hangs are the same.
struct RowMemory {
  bool known = false;
  std::vector<trade::Interval> runs;
  std::vector<HangState> hangs;
  trade::Running ran;
  RowShaking shaken;
};

struct ElementMemory {
  std::vector<RowMemory> rows;                        // as the plan's
  std::vector<trade::SetStep> sets;                   // as they were
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
