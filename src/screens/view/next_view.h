// The one thing to do next at an element, of all that its plan and its log ask for: the card that
// does it says no more than that.
#pragma once

#include "screens/view/pour_view.h"

namespace rb::screens {

enum class NextDo {
  nothing,
  rest,       ///< a row has run enough
  cables,     ///< a row to run hangs, its safety cables are not said to be fixed
  run,        ///< a row waits for its run, and may run
  take_down,  ///< motors come down from a row, for another
  hang,       ///< motors that are down are hung on a row
  hold,       ///< a row that waits must not run: the head is too high
  wait,       ///< rows run, and have not run enough
  read_top    ///< nobody read whether the concrete has come to a row that serves the lift
};

struct NextStep {
  NextDo what = NextDo::nothing;
  const RowView* row = nullptr;            ///< of rest, cables, run, hold, wait, read_top
  const MoveView* move = nullptr;          ///< of take_down; of hang, where motors are moved
  const MoveView::From* from = nullptr;    ///< of take_down
  const RunNowView* hang_first = nullptr;  ///< of hang: the row to run hangs nowhere
  std::size_t alike = 0;                   ///< other rows that want the same
};

/// What is over is ended before anything is begun, what may run runs before motors are hung, and a
/// row is hung before it runs. Looked at as long as the view is.
NextStep next_step(const PourView& view);

}  // namespace rb::screens
