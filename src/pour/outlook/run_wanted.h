// Whether a row is to be run now and, if it is not, why not. The one answer that the RUN buttons
// and the list of what to run next go by.
#pragma once

#include <vector>

#include "pour/log/state.h"
#include "pour/outlook/row_head.h"

namespace rb {

bool serves(const Row& row, int lift);

/// The seconds of a run that count between two moments, slow ones for less (form.h).
Seconds counted(const PourState& state, const RunState& run, Seconds since, Seconds until);

/// How long a row has run since a moment on the pour's clock, all its runs together, up to now, in
/// seconds that count.
Seconds ran_since(const PourState& state, std::size_t element, std::size_t row, Seconds since,
                  Seconds now);

/// Whether the pour is on hold and the form moved or a motor came loose in that hold or began it:
/// nothing is to be run.
bool cleared_off(const PourState& state);

/// Why a row is not to be run. Where several hold, the first of these.
enum class RunWait {
  none,        ///< it is wanted
  closed,      ///< the pour is
  cleared,     ///< cleared_off()
  head_over,   ///< the form does not bear the head
  empty,       ///< no concrete where its motors work, in any bay
  unread,      ///< none by the tops read; by the last rise it has come
  over_set,    ///< all it works on may have set
  not_hung,    ///< no motor hangs there
  not_served,  ///< the plan has it work for other lifts
  enough,      ///< it ran as long as the plan asks
};

struct RunAnswer {
  RunWait wait = RunWait::none;
  /// The plan asks for it and it would do good: it serves the lift placed last, has not run enough
  /// and works on concrete that has not set. It may have to wait for its motors or a lower head.
  bool due = false;
  Seconds ran{};          ///< for that lift; slow seconds count for less (form.h)
  double counts = 1;      ///< what a second of it counts for, running now
  bool over_set = false;  ///< all it works on may have set
  RowHead head{};
  [[nodiscard]] bool wanted() const { return wait == RunWait::none; }
};

/// By row of an element. A row works on a bay's concrete where a motor hung on it reaches (none
/// hung: where the planned ones would), by the tops that were read. That concrete has set when what
/// came last of it may have, by the early side of the clock (set_clock.h): running the row then
/// does no good and may crack what is there. One bay with fresh concrete is enough to be wanted.
std::vector<RunAnswer> run_answers(const PourState& state, std::size_t element, Seconds now);

}  // namespace rb
