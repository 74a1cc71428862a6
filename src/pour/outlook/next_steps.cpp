#include "pour/outlook/next_steps.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "pour/log/log_entry.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

/// The first lift from `from` on that a row serves; 0 for none.
int first_served(const Row& row, int from) {
  int first = 0;
  for (const int lift : row.serves) {
    if (lift >= from && (first == 0 || lift < first)) first = lift;
  }
  return first;
}

/// The lift being placed, else the one a start would begin.
int lift_to_come(const PourState& state, std::size_t element) {
  if (const LiftState* placing = state.placing(element)) return placing->lift;
  int greatest = 0;
  for (const LiftState& lift : state.elements[element].lifts) {
    greatest = std::max(greatest, lift.lift);
  }
  return greatest + 1;
}

bool ran_for_latest(const PourState& state, std::size_t element, std::size_t row, Seconds now) {
  const auto& lifts = state.elements[element].lifts;
  if (lifts.empty()) return true;
  const LiftState& latest = lifts.back();
  if (!serves(state.plan->elements[element].rows[row], latest.lift)) return true;
  return ran_enough(ran_since(state, element, row, latest.started, now), state.plan->limits);
}

bool served_no_more(const PourState& state, std::size_t element, std::size_t row, Seconds now) {
  return first_served(state.plan->elements[element].rows[row], lift_to_come(state, element)) == 0 &&
         ran_for_latest(state, element, row, now);
}

/// The motors on a hung row: those named when it was hung, else the planned ones.
std::vector<MotorId> motors_on(const PourState& state, const HangState& hang) {
  if (const auto* named = std::get_if<event::Hang>(&state.log[hang.ref].event.what);
      named != nullptr && !named->motors.empty()) {
    return named->motors;
  }
  std::vector<MotorId> planned;
  for (const Motor& motor : state.plan->elements[hang.element].rows[hang.row].motors) {
    planned.push_back(motor.id);
  }
  return planned;
}

MotorShift move_to(const PourState& state, std::size_t element, std::size_t row,
                   const std::set<MotorId>& wanted, Seconds now) {
  MotorShift move{
      .row = row,
      .lift = first_served(state.plan->elements[element].rows[row], lift_to_come(state, element)),
      .down = wanted.size()};
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    for (std::size_t r = 0; r < state.plan->elements[e].rows.size(); ++r) {
      const HangState* hang = state.hanging(e, r);
      if (hang == nullptr) continue;
      const auto there = motors_on(state, *hang);
      const auto count = static_cast<std::size_t>(std::count_if(
          there.begin(), there.end(), [&](const MotorId& m) { return wanted.count(m) > 0; }));
      move.down -= std::min(move.down, count);
      if (count > 0 && served_no_more(state, e, r, now)) {
        move.from.push_back({e, r, count, state.running(e, r) != nullptr});
      }
    }
  }
  return move;
}

}  // namespace

std::vector<RowToRun> rows_to_run(const PourState& state, std::size_t element, Seconds now) {
  std::vector<RowToRun> found;
  const auto& rows = state.plan->elements[element].rows;
  const auto answers = run_answers(state, element, now);
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const RunAnswer& answer = answers[r];
    if (!answer.due) continue;
    found.push_back({r, (state.plan->limits.dose_min.value - answer.ran) / answer.counts,
                     state.running(element, r) != nullptr, answer.wait});
  }
  const auto line = [&](const RowToRun& run) {
    const int wait = run.wait == RunWait::none ? 0 : run.wait == RunWait::not_hung ? 1 : 2;
    return std::tuple{wait, run.running, rows[run.row].z};
  };
  std::stable_sort(found.begin(), found.end(),
                   [&](const RowToRun& a, const RowToRun& b) { return line(a) < line(b); });
  return found;
}

std::vector<MotorShift> motors_to_move(const PourState& state, std::size_t element, Seconds now) {
  std::vector<MotorShift> moves;
  if (state.closed) return moves;
  const auto& rows = state.plan->elements[element].rows;
  const int lift = lift_to_come(state, element);
  std::vector<std::size_t> to_come;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    if (first_served(rows[r], lift) > 0 && state.hanging(element, r) == nullptr) {
      to_come.push_back(r);
    }
  }
  std::stable_sort(to_come.begin(), to_come.end(), [&](std::size_t a, std::size_t b) {
    return std::pair{first_served(rows[a], lift), rows[a].z} <
           std::pair{first_served(rows[b], lift), rows[b].z};
  });
  // A motor goes to the first row in line that wants it, and to no other.
  std::set<MotorId> claimed;
  for (const std::size_t r : to_come) {
    std::set<MotorId> wanted;
    for (const Motor& motor : rows[r].motors) {
      if (claimed.insert(motor.id).second) wanted.insert(motor.id);
    }
    if (wanted.empty()) continue;
    MotorShift move = move_to(state, element, r, wanted, now);
    if (!move.from.empty() || move.down == wanted.size()) moves.push_back(std::move(move));
  }
  return moves;
}

}  // namespace rb
