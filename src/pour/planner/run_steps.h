// A planned pour as it is done, step after step in the order of time: what a run sheet tells, and
// what somebody who follows it does.
#pragma once

#include <optional>
#include <vector>

#include "pour/planner/planner.h"

namespace rb {

/// Steps at one moment are told in this order.
enum class RunStepKind {
  move,       ///< motors go to another row, or up from the ground
  hung,       ///< hold: nothing goes in before motors that the lift is the first to need hang
  test,       ///< hold: the first load is tested before it goes in
  load,       ///< a truck's concrete is wanted
  lift,       ///< a lift begins
  bay,        ///< of a deck: its concrete comes
  placed,     ///< hold: a lift's top is read before its rows run
  knit_by,    ///< hold: the joint under the lift sets; it must be knitted before
  insert,     ///< internal vibrators in every bay; of a deck, in one
  run,        ///< a row runs
  wait,       ///< for motors being moved
  last_rest,  ///< the last row rests
};

struct RunStep {
  RunStepKind kind = RunStepKind::lift;
  Seconds at{};          ///< from the first lift's start; below 0: before it
  Seconds takes{};       ///< 0: a moment
  std::size_t lift = 0;  ///< index into `lifts`
  std::size_t row = 0;   ///< of `run`: index into the element's rows
  std::size_t load = 0;  ///< of `load`: index into `loads`
  MotorsMove move{};     ///< of `move`
  std::size_t bay = 0;   ///< of a deck's `bay` and `insert`: index into the lift's `inserts`
};

std::vector<RunStep> run_steps(const PlannedPour& planned);

/// When the joint on top of a lift sets: it is knitted before. None on the last.
std::optional<Seconds> joint_sets(const PlannedPour& planned, std::size_t lift);

}  // namespace rb
