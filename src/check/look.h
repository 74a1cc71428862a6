// What the rules look at: the state, the moment, and the physics worked out once for all of them.
// Inside this room.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "check/check.h"
#include "check/lift_look.h"
#include "pour/outlook/form.h"

namespace rb {

/// The rows of the last lift have run by then (our own choice).
inline constexpr Seconds kTopLiftDone{900};

struct FeedMemories;

struct Look {
  const PourState& state;
  AsOf asof;                                     ///< never past the close
  std::vector<trade::Face> faces;                ///< by element, with its judged sides
  std::vector<std::vector<RowShaking>> shaken;   ///< by element and row
  std::vector<std::vector<RowShaking>> drew;     ///< the same, as load: unrested runs count whole
  std::vector<std::vector<trade::Running>> ran;  ///< by element and row, whatever hung
  std::vector<LiftReport> lifts;
  std::vector<LiftLook*> lift_looks;  ///< of `lifts`; none where no side is judged
  /// By element: all its concrete, lift by lift, and what was there before any lift began.
  std::vector<std::vector<LiftLook*>> concrete;
  std::vector<RunReport> runs;
  /// Indices into PourState::runs and trucks: all on which there may be something to find.
  std::span<const std::size_t> runs_at_issue, trucks_at_issue;
  FeedMemories* feeds = nullptr;
  std::vector<PowerReport> power{};  ///< of inverters that something ran on
  std::vector<GeneratorReport> generators{};
  AsOf asked{};  ///< as asked: what comes after the pour goes by it

  [[nodiscard]] const Plan& plan() const { return *state.plan; }
  [[nodiscard]] const Element& element(const LiftReport& report) const {
    return state.plan->elements[report.element];
  }
  [[nodiscard]] const LiftState& lift(const LiftReport& report) const {
    return state.elements[report.element].lifts[report.index];
  }
  /// Whether all that is to be done for a lift should be done by now: always in a finished look; in
  /// a live one when the next lift has begun, the pour is closed, or the last planned lift was
  /// ended kTopLiftDone ago.
  [[nodiscard]] bool settled(const LiftReport& report) const {
    if (!asof.live || lift(report).next_start || state.closed) return true;
    const auto& ended = lift(report).ended;
    const bool top = static_cast<std::size_t>(report.lift) >= element(report).lifts.size();
    return top && ended && asof.at - *ended > kTopLiftDone;
  }
  [[nodiscard]] Seconds run_end(const RunState& run) const {
    return std::min(run.to.value_or(asof.at), asof.at);
  }
};

/// The limit a lift's rise is held to: the lowest from its start to its last reading (in a live
/// look until now, while it is placed), for concrete tested colder or of another mix may have come
/// into the lift.
std::optional<RiseLimit> rise_limit_of(const PourState& state, AsOf asof, std::size_t element,
                                       const LiftState& lift);

/// Good as long as the memory is not used again.
Look look_at(const PourState& state, AsOf asof, CheckMemory& memory);

/// Remembers what need not be looked at again, for something was found on none of it.
void settle(const Look& look, CheckMemory& memory, const std::vector<Finding>& findings);

}  // namespace rb
