#include "pour/outlook/run_wanted.h"

#include <algorithm>

#include "pour/outlook/form.h"
#include "trade/shape/patch.h"

namespace rb {

namespace {

enum class WorksOn { nothing, set, fresh };

bool some_hang(const HangState* hung) {
  return hung != nullptr &&
         std::find(hung->places.begin(), hung->places.end(), true) != hung->places.end();
}

// What the motors of a row that count work on in a bay. They hang at one height: the one that
// reaches farthest reaches all that the others do.
WorksOn works_on(const PourState& state, std::size_t element, const Row& row, const HangState* hung,
                 std::size_t bay, const std::vector<trade::SetStep>& steps, Seconds now) {
  const Element& planned = state.plan->elements[element];
  const Motor* farthest = nullptr;
  const Length start = planned.bay_start(bay);
  const Length end = start + planned.bays[bay];
  for (std::size_t m = 0; m < row.motors.size(); ++m) {
    const Motor& motor = row.motors[m];
    if (hung != nullptr && !hung->places[m]) continue;
    if (!reaches(motor, start, end)) continue;
    if (farthest == nullptr || motor.reach_z > farthest->reach_z) farthest = &motor;
  }
  if (farthest == nullptr) return WorksOn::nothing;
  const trade::TopCurve& top = state.elements[element].tops[bay];
  const Length standing = top.at(now);
  if (standing <= lowest_reached(planned, row, *farthest) + trade::kSamePlace) {
    return WorksOn::nothing;
  }
  const Length highest = row.z + reach_up(planned, *farthest);
  const auto came = top.reached(std::min(standing, highest));
  return came && trade::sets_at(steps, *came) > now ? WorksOn::fresh : WorksOn::set;
}

WorksOn works_on(const PourState& state, std::size_t element, const Row& row, const HangState* hung,
                 const std::vector<trade::SetStep>& steps, Seconds now) {
  WorksOn best = WorksOn::nothing;
  for (std::size_t bay = 0; bay < state.elements[element].tops.size(); ++bay) {
    best = std::max(best, works_on(state, element, row, hung, bay, steps, now));
    if (best == WorksOn::fresh) break;
  }
  return best;
}

}  // namespace

bool serves(const Row& row, int lift) {
  return std::find(row.serves.begin(), row.serves.end(), lift) != row.serves.end();
}

Seconds counted(const PourState& state, const RunState& run, Seconds since, Seconds until) {
  Seconds sum{};
  for_weighed(state, run, until, [&](const trade::Interval& piece) {
    const Seconds from = std::max(piece.from, since);
    if (piece.to > from) sum += (piece.to - from) * piece.work;
  });
  return sum;
}

Seconds ran_since(const PourState& state, std::size_t element, std::size_t row, Seconds since,
                  Seconds now) {
  const auto& runs = state.elements[element].rows[row].runs;  // one after the other
  auto first = runs.end();
  while (first != runs.begin() && state.runs[*(first - 1)].to.value_or(now) > since) --first;
  Seconds sum{};
  for (; first != runs.end(); ++first) {
    const RunState& run = state.runs[*first];
    sum += counted(state, run, since, std::min(run.to.value_or(now), now));
  }
  return sum;
}

bool cleared_off(const PourState& state) {
  if (state.holds.empty() || state.holds.back().to) return false;
  // Of a pour that was on hold already it is no hold of its own.
  const HoldState& hold = state.holds.back();
  return hold.moved || (!state.moved.empty() && state.moved.back().at >= hold.from);
}

std::vector<RunAnswer> run_answers(const PourState& state, std::size_t element, Seconds now) {
  const auto& rows = state.plan->elements[element].rows;
  const auto& lifts = state.elements[element].lifts;
  const int lift = lifts.empty() ? 1 : lifts.back().lift;
  const Seconds since = lifts.empty() ? Seconds{} : lifts.back().started;
  const auto heads = heads_now(state, element, now);
  const auto steps = set_steps(state, element);
  const bool cleared = cleared_off(state);
  std::vector<RunAnswer> answers;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    RunAnswer answer{.ran = ran_since(state, element, r, since, now), .head = heads[r]};
    if (const RunState* run = state.running(element, r)) {
      for_weighed(state, *run, Seconds{1e18},
                  [&](const trade::Interval& piece) { answer.counts = piece.work; });
    }
    const HangState* hung = state.hanging(element, r);
    const bool hangs = some_hang(hung);
    const WorksOn on = works_on(state, element, rows[r], hangs ? hung : nullptr, steps, now);
    const bool served = serves(rows[r], lift);
    const bool enough = ran_enough(answer.ran, state.plan->limits);
    answer.over_set = on == WorksOn::set;
    answer.due = !state.closed && !cleared && on == WorksOn::fresh && served && !enough;
    if (state.closed) {
      answer.wait = RunWait::closed;
    } else if (cleared) {
      answer.wait = RunWait::cleared;
    } else if (answer.head.verdict == HeadVerdict::over) {
      answer.wait = RunWait::head_over;
    } else if (on == WorksOn::nothing) {
      answer.wait = answer.head.reached ? RunWait::unread : RunWait::empty;
    } else if (on == WorksOn::set) {
      answer.wait = RunWait::over_set;
    } else if (!hangs) {
      answer.wait = RunWait::not_hung;
    } else if (!served) {
      answer.wait = RunWait::not_served;
    } else if (enough) {
      answer.wait = RunWait::enough;
    }
    answers.push_back(answer);
  }
  return answers;
}

}  // namespace rb
