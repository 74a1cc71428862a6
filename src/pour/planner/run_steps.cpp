#include "pour/planner/run_steps.h"

#include <algorithm>

namespace rb {

namespace {

// Whether a row runs for a lift that ran for none before.
bool needs_anew(const PlannedPour& planned, std::size_t lift) {
  const auto ran = [&](std::size_t row) {
    for (std::size_t i = 0; i < lift; ++i) {
      const auto& rows = planned.lifts[i].rows;
      if (std::find(rows.begin(), rows.end(), row) != rows.end()) return true;
    }
    return false;
  };
  const auto& rows = planned.lifts[lift].rows;
  return !std::all_of(rows.begin(), rows.end(), ran);
}

bool of_deck(const PlannedPour& planned) {
  return planned.plan.elements.front().kind == ElementKind::deck;
}

}  // namespace

std::optional<Seconds> joint_sets(const PlannedPour& planned, std::size_t lift) {
  if (lift + 1 >= planned.lifts.size()) return std::nullopt;
  const LiftStep& step = planned.lifts[lift];
  if (of_deck(planned)) return step.begins + planned.sets;  // of its first bay
  const Length depth = planned.plan.limits.knit_depth.value;
  const double worked = std::min(1.0, double{depth / (step.top - step.bottom)});
  return step.begins + step.place * (1 - worked) + planned.sets;
}

std::vector<RunStep> run_steps(const PlannedPour& planned) {
  std::vector<RunStep> steps;
  const auto tell = [&](RunStepKind kind, Seconds at, Seconds takes, std::size_t lift) -> RunStep& {
    RunStep step;
    step.kind = kind;
    step.at = at;
    step.takes = takes;
    step.lift = lift;
    steps.push_back(step);
    return steps.back();
  };
  const auto move = [&](const MotorsMove& moved, std::size_t lift) {
    tell(RunStepKind::move, moved.begins, moved.takes, lift).move = moved;
  };
  for (const MotorsMove& moved : planned.before) move(moved, 0);
  tell(RunStepKind::test, Seconds{}, Seconds{}, 0);
  for (std::size_t i = 0; i < planned.loads.size(); ++i) {
    const PlannedLoad& load = planned.loads[i];
    std::size_t lift = 0;
    while (lift + 1 < planned.lifts.size() && planned.lifts[lift + 1].begins <= load.begins) ++lift;
    tell(RunStepKind::load, load.begins, load.ends - load.begins, lift).load = i;
  }
  for (std::size_t i = 0; i < planned.lifts.size(); ++i) {
    const LiftStep& lift = planned.lifts[i];
    if (!of_deck(planned) && needs_anew(planned, i))
      tell(RunStepKind::hung, lift.begins, Seconds{}, i);
    tell(RunStepKind::lift, lift.begins, lift.place, i);
    if (of_deck(planned)) {
      for (std::size_t b = 0; b < lift.inserts.size(); ++b) {
        const InsertStep& in = lift.inserts[b];
        tell(RunStepKind::bay, in.fills, in.filled - in.fills, i).bay = b;
        tell(RunStepKind::insert, in.begins, in.takes, i).bay = b;
      }
      if (i > 0) tell(RunStepKind::knit_by, lift.begins, Seconds{}, i);
      continue;
    }
    for (const MotorsMove& moved : lift.moves) move(moved, i);
    tell(RunStepKind::placed, lift.begins + lift.place, Seconds{}, i);
    if (!lift.inserts.empty()) tell(RunStepKind::insert, lift.begins + lift.place, Seconds{}, i);
    for (std::size_t r = 0; r < lift.rows.size(); ++r) {
      tell(RunStepKind::run, lift.runs_at(r), lift.run, i).row = lift.rows[r];
    }
    if (i > 0) tell(RunStepKind::knit_by, lift.begins + lift.place, Seconds{}, i);
    if (lift.pause > Seconds{}) tell(RunStepKind::wait, lift.rested(), lift.pause, i);
  }
  tell(RunStepKind::last_rest, planned.duration, Seconds{}, planned.lifts.size() - 1);
  std::stable_sort(steps.begin(), steps.end(), [](const RunStep& a, const RunStep& b) {
    return a.at != b.at ? a.at < b.at : a.kind < b.kind;
  });
  return steps;
}

}  // namespace rb
