// The taps a finding rests on: its own event, and those that tell of its place or its load while it
// came about.
#include <algorithm>

#include "check/review.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/face_bands.h"
#include "pour/plan/row_reach.h"

namespace rb {

namespace {

class Behind {
 public:
  Behind(const PourState& state, const Finding& finding) : state_(state), f_(finding) {
    from_ = f_.from.value_or(Seconds{-1e18});
    to_ = std::max(f_.to.value_or(state.last), from_);
  }

  std::vector<EventRef> taps() {
    if (f_.ref) refs_.push_back(*f_.ref);
    if (f_.ticket) load(*f_.ticket);
    if (f_.inverter) inverter();
    if (f_.row && f_.element) row(*f_.element, *f_.row, from_, to_);
    if (f_.lift && f_.element) lift();
    const auto earlier = [&](EventRef a, EventRef b) {
      const Moment one = state_.log[a].when;
      const Moment other = state_.log[b].when;
      return one != other ? one < other : a < b;
    };
    std::sort(refs_.begin(), refs_.end(), earlier);
    refs_.erase(std::unique(refs_.begin(), refs_.end()), refs_.end());
    return std::move(refs_);
  }

 private:
  void load(const TicketId& ticket) {
    if (const auto t = truck_of(state_, ticket)) {
      const TruckState& truck = state_.trucks[*t];
      if (truck.ref) refs_.push_back(*truck.ref);
      for (const PartState& part : truck.parts) refs_.push_back(part.ref);
    }
    for (const TestState& test : state_.tests) {
      if (test.what.ticket == ticket) refs_.push_back(test.ref);
    }
  }

  void inverter() {
    const auto& all = state_.plan->power;
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const Inverter& i) { return i.id == *f_.inverter; });
    if (found == all.end()) return;
    const auto index = static_cast<std::size_t>(found - all.begin());
    for (const SpeedState& speed : state_.speeds) {
      if (speed.inverter == index && within(speed.at)) refs_.push_back(speed.ref);
    }
    for (const TripState& trip : state_.trips) {
      if (trip.inverter == index && within(trip.at)) refs_.push_back(trip.ref);
    }
    // Who ran on it meanwhile: what its motors drew is theirs.
    for (std::size_t r = 0; r < state_.runs.size(); ++r) {
      const RunState& run = state_.runs[r];
      const Row& planned = state_.row_of(run);
      const bool fed = std::any_of(planned.motors.begin(), planned.motors.end(),
                                   [&](const Motor& m) { return feeds(*found, m.id); });
      if (fed && meets(run, from_, to_)) add(run);
    }
  }

  void row(std::size_t element, std::size_t row, Seconds from, Seconds to) {
    const RowState& there = state_.elements[element].rows[row];
    for (const std::size_t r : there.runs) {
      if (meets(state_.runs[r], from, to)) add(state_.runs[r]);
    }
    // How it hung when it began.
    for (const std::size_t h : there.hangs) {
      const HangState& hang = state_.hangs[h];
      if (hang.from <= to && hang.to.value_or(to) >= from) refs_.push_back(hang.ref);
    }
  }

  // A lift's own taps, and the rows that reach it from its start to what was found, or to its set.
  void lift() {
    const ElementState& there = state_.elements[*f_.element];
    const Element& planned = state_.plan->elements[*f_.element];
    const LiftState* of = lift_numbered(there, *f_.lift);
    if (of == nullptr) return;
    const LiftState& lift = *of;
    refs_.push_back(lift.ref);
    const Seconds ended = lift.next_start.value_or(state_.last);
    for (const TopReading& reading : state_.readings) {
      const bool of_it = reading.element == *f_.element && reading.at >= lift.started &&
                         reading.at <= ended && (!f_.bay || reading.bay == *f_.bay);
      if (of_it) refs_.push_back(reading.ref);
    }
    for (const InsertState& insert : state_.inserts) {
      const bool of_it = insert.element == *f_.element && insert.what.lift == lift.lift &&
                         (!f_.bay || !insert.bay || insert.bay == f_.bay);
      if (of_it) refs_.push_back(insert.ref);
    }
    if (f_.row) return;
    const Length low = *std::min_element(lift.bottom.begin(), lift.bottom.end());
    const Length high = *std::max_element(lift.top.begin(), lift.top.end());
    for (std::size_t r = 0; r < planned.rows.size(); ++r) {
      const Row& row_there = planned.rows[r];
      if (f_.side && row_there.side != *f_.side) continue;
      const RowSpan span = span_of(planned, row_there);
      if (span.high < low || span.low > high) continue;
      for (const std::size_t run : there.rows[r].runs) {
        const RunState& ran = state_.runs[run];
        if (meets(ran, lift.started, std::max(to_, lift.started))) add(ran);
      }
    }
  }

  [[nodiscard]] bool within(Seconds at) const { return at >= from_ && at <= to_; }
  [[nodiscard]] static bool meets(const RunState& run, Seconds from, Seconds to) {
    return run.from <= to && run.to.value_or(to) >= from;
  }
  void add(const RunState& run) {
    refs_.push_back(run.ref);
    if (run.rest) refs_.push_back(*run.rest);
  }

  const PourState& state_;
  const Finding& f_;
  Seconds from_{}, to_{};
  std::vector<EventRef> refs_;
};

}  // namespace

std::vector<EventRef> taps_behind(const PourState& state, const Finding& finding) {
  return Behind{state, finding}.taps();
}

}  // namespace rb
