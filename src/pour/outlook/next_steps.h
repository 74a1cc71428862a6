// What the plan has a foreman do next: which rows to run now, and which motors to move up. Reads
// only the plan and what has been logged; it advises and orders nothing.
#pragma once

#include <vector>

#include "pour/outlook/run_wanted.h"

namespace rb {

/// A row that is due (run_wanted.h).
struct RowToRun {
  std::size_t row = 0;  ///< index into the element's rows
  Seconds to_go{};      ///< until it has run enough
  bool running = false;
  RunWait wait = RunWait::none;  ///< none, or why not yet: not_hung, head_over
  bool operator==(const RowToRun&) const = default;
};
/// Those that may run first, then those to be hung, then those whose head is too high; of each
/// those at rest, then from the bottom up.
std::vector<RowToRun> rows_to_run(const PourState& state, std::size_t element, Seconds now);

/// Motors wanted by a row to come that hangs not yet.
struct MotorShift {
  struct From {
    std::size_t element = 0, row = 0;  ///< where they hang now
    std::size_t motors = 0;            ///< how many of the wanted ones
    bool running = false;              ///< it must rest before its motors come down
    bool operator==(const From&) const = default;
  };
  std::size_t row = 0;       ///< that wants them
  int lift = 0;              ///< the first lift it will serve from now on
  std::vector<From> from{};  ///< rows served no more, which may be taken down
  std::size_t down = 0;      ///< wanted motors that hang nowhere: they can be hung at once
  bool operator==(const MotorShift&) const = default;
};
/// The moves that can be begun now, the row wanted first at the front. A row is served no more when
/// it serves no lift still to come or being placed, and has run enough for the one placed last.
/// Motors that must stay where they are make no move.
std::vector<MotorShift> motors_to_move(const PourState& state, std::size_t element, Seconds now);

}  // namespace rb
