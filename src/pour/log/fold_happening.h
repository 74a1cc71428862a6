// One event put into the state, and taken out of it again. Inside this room.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "pour/log/log_entry.h"
#include "pour/log/places.h"
#include "pour/log/state.h"

namespace rb {

/// Applies log entry `ref` (neither struck nor a correction gone wrong) at its moment, later than
/// all applied before, which it follows in PourState::order. Marks it as repeating or wrong, with
/// the reason, when it does not count. What it changed is put down in the state's memory.
void apply_happening(PourState& state, EventRef ref);

/// Takes back the changes made since there were this many of them; none happened before `from`.
void take_back_changes(PourState& state, std::size_t changes, Seconds from);

/// Leaves a trace of a change that is made, or about to be taken back, at a moment.
void leave_trace(PourState& state, const StateChange& change, Seconds from);
/// Leaves a trace that says all may be other than it was.
void leave_trace_of_all(PourState& state);

/// What putting an event into the state takes, shared by the files that do it.
class Applying {
 public:
  Applying(PourState& state, EventRef ref)
      : state_(state),
        ref_(ref),
        entry_(state.log[ref]),
        at_(state.clock(entry_.when)),
        happened_(at_) {}

  [[nodiscard]] Seconds at() const { return at_; }

 protected:
  using List = changed::List;

  void note(StateChange change) {
    leave_trace(state_, change, happened_);
    state_.memory.changes.push_back(std::move(change));
  }
  template <class Item>
  void add(std::vector<Item>& list, List which, Item item) {
    list.push_back(std::move(item));
    note(changed::Grew{which});
  }
  template <class Item>
  static std::size_t index_in(const std::vector<Item>& list, const Item* item) {
    return static_cast<std::size_t>(item - list.data());
  }
  [[nodiscard]] std::pair<std::size_t, std::size_t> place(const RowPlace& place) const {
    return *row_at(state_, place);
  }
  template <class Kind>
  [[nodiscard]] std::optional<std::size_t> element_of(const Kind& kind) const {
    return element_index(*state_.plan, kind.element);
  }
  RunState* open_run(std::size_t element, std::size_t row) {
    return const_cast<RunState*>(state_.running(element, row));
  }
  void begin_hang(HangState hang);
  void end_hang(std::size_t element, std::size_t row);
  /// The same, but what is out of work stays so: the row may run on without being logged as hung.
  void take_off(std::size_t element, std::size_t row);
  /// At a moment that is no rest of its own: a trip, a motor's end, a start anew.
  void end_run(RunState& run);
  /// No motor of a run that hangs turns: all are out of work, or their inverters have tripped.
  [[nodiscard]] bool none_left(const RunState& run) const;

  /// The hang of a row that goes on, be it one that does not stand; null: none does.
  [[nodiscard]] HangState* open_hang(std::size_t element, std::size_t row);

  PourState& state_;
  EventRef ref_;
  LogEntry& entry_;
  Seconds at_;  // at last when what it tells of was over
  Seconds happened_;
};

/// The kinds of kinds_review.h.
class ApplyReview : public Applying {
 public:
  using Applying::Applying;

  void operator()(const event::Accept& e);
  void operator()(const event::SendBack& e);
  void operator()(const event::MotorOut& e);
  void operator()(const event::Reinspect& e);
  void operator()(const event::Photo& e);
  void operator()(const event::Amend& e);
  void operator()(const event::Enrol& e);
  void operator()(const event::Inspect& e);
};

}  // namespace rb
