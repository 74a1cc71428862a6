// What CheckMemory holds. Inside this room.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "check/check.h"
#include "check/lift_look.h"
#include "check/look.h"

namespace rb {

/// The stretch in which most was drawn from a feed.
struct FeedMoment {
  Seconds from{}, to{};
  std::size_t motors = 0;  ///< running on it
  double load = 0;         ///< in the unit of its weights
};

/// What an inverter adds to a feed: for each motor that runs, and while any does.
struct FeedWeight {
  double motor = 0, beside = 0;
  bool operator==(const FeedWeight&) const = default;
};

/// What ran on a feed up to a moment: where counting goes on.
struct FeedMemory {
  bool live = false;
  std::vector<FeedWeight> weights;  // of its inverters
  Seconds until{-1e18};
  std::vector<int> running;  // on each
  FeedMoment most;
  bool most_ended = true;  ///< `most.to` is known
};

struct FeedMemories {
  std::vector<FeedMemory> inverters, trunks;  // as the plan's
  std::vector<FeedMemory> generators;         // as Plan::by_generator
};

/// A run's head, good as long as the tops of its element up to its end are the same.
struct KnownHead {
  std::size_t element = 0, row = 0;
  Seconds from{}, end{};
  UnitWeight weight;
  RunReport report;
};

/// Heights over which a row's motors work.
struct RowReach {
  Length low, high;
};

/// When a row ran and its places shook, good as long as its runs and hangs are the same.
struct RowMemory {
  bool known = false;
  std::vector<trade::Interval> runs;  ///< weighed
  std::vector<RunTrip> trips;
  std::vector<HangState> hangs;
  bool unrested = false;  ///< one of them is: any event may end it, and it loads until it is ended
  trade::Running ran;
  RowShaking shaken, drew;
};

/// How a lift rose, and the limit it was held to.
struct KnownRise {
  Seconds started{}, last_reading{};
  std::optional<Velocity> window, at_least;
  Seconds until{};
  std::optional<RiseLimit> limit;
};

struct ElementMemory {
  std::vector<RowMemory> rows;                        // as the plan's
  std::vector<trade::SetStep> sets, late_sets;        // as they were
  std::vector<std::unique_ptr<LiftLook>> lifts;       // one a lift, and first what lies below
  std::vector<std::vector<BayReached>> bays_of_rows;  // of the plan
  std::vector<std::optional<KnownRise>> rises;        // as the lifts
};

struct CheckMemory::Inside {
  std::shared_ptr<const Plan> plan;
  std::vector<ElementMemory> elements;
  std::uint64_t stamp = 0;       // of the state looked at (as_it_was.h)
  std::vector<KnownHead> heads;  // as PourState::runs
  // Indices, going up, of what is to be looked at again. The others were looked at, nothing was
  // found, and nothing that is still to come can change that.
  std::vector<std::size_t> runs_at_issue, trucks_at_issue;
  FeedMemories feeds;
};

}  // namespace rb
