#include "screens/view/next_view.h"

#include <algorithm>

namespace rb::screens {

namespace {

bool ran_enough(const RowView& row) {
  return row.running_since && (row.word == DoseWord::enough || row.word == DoseWord::over);
}

template <class Wants>
NextStep of_rows(const PourView& view, NextDo what, const Wants& wants) {
  NextStep step;
  // From the bottom up, as the concrete rises.
  for (auto row = view.rows.rbegin(); row != view.rows.rend(); ++row) {
    if (!wants(*row)) continue;
    if (step.row == nullptr) {
      step = {.what = what, .row = &*row};
    } else {
      ++step.alike;
    }
  }
  return step;
}

const RunNowView* asked_for(const PourView& view, const RowView& row, RunWait wait) {
  const auto run = std::find_if(view.run_now.begin(), view.run_now.end(), [&](const auto& now) {
    return now.place == row.place && now.wait == wait && !now.running;
  });
  return run == view.run_now.end() ? nullptr : &*run;
}

NextStep of_move(const MoveView& move) {
  for (const MoveView::From& from : move.from) {
    if (!from.running) return {.what = NextDo::take_down, .move = &move, .from = &from};
  }
  if (move.from.empty()) return {.what = NextDo::hang, .move = &move};
  return {};  // its motors run still
}

// The row to run hangs nowhere: what moves its motors comes first.
NextStep of_hanging(const PourView& view) {
  for (const RunNowView& run : view.run_now) {
    if (run.wait != RunWait::not_hung || run.running) continue;
    const auto move = std::find_if(view.moves.begin(), view.moves.end(),
                                   [&](const MoveView& m) { return m.to == run.place; });
    if (move == view.moves.end()) return {.what = NextDo::hang, .hang_first = &run};
    NextStep step = of_move(*move);
    step.hang_first = &run;
    if (step.what != NextDo::nothing) return step;
  }
  for (const MoveView& move : view.moves) {
    const NextStep step = of_move(move);
    if (step.what != NextDo::nothing) return step;
  }
  return {};
}

}  // namespace

NextStep next_step(const PourView& view) {
  if (view.closed) return {};
  NextStep step = of_rows(view, NextDo::rest, ran_enough);
  if (step.row != nullptr) return step;
  const auto may_run = [&](const RowView& row) {
    return asked_for(view, row, RunWait::none) != nullptr;
  };
  step = of_rows(view, NextDo::run, may_run);
  if (step.row != nullptr) {
    if (!step.row->cables) step.what = NextDo::cables;
    return step;
  }
  step = of_hanging(view);
  if (step.what != NextDo::nothing) return step;
  step = of_rows(view, NextDo::hold, [&](const RowView& row) {
    return asked_for(view, row, RunWait::head_over) != nullptr;
  });
  if (step.row != nullptr) return step;
  step =
      of_rows(view, NextDo::wait, [](const RowView& row) { return row.running_since.has_value(); });
  if (step.row != nullptr) return step;
  if (!view.lift.placing) return {};
  return of_rows(view, NextDo::read_top,
                 [](const RowView& row) { return row.serves_lift && row.wait == RunWait::unread; });
}

}  // namespace rb::screens
