// What a face can be looked at for besides its dose, bay by bay and height by height: which load
// came there, how old a lift's top was when it was covered, and the head that pressed there while
// rows ran. Each with its moments, so that it can be told as it was at any of them. Both sides of a
// form hold the same concrete; only the head is a side's own.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"
#include "pour/outlook/loads.h"

namespace rb {

/// The lift of a number that was started last; null: none was.
const LiftState* lift_numbered(const ElementState& element, int number);

/// Concrete of a bay that came from the same loads.
struct LoadBand {
  std::size_t bay = 0;
  Length from, to;
  Seconds came{}, until{};          ///< when its first and its last came
  std::vector<std::size_t> trucks;  ///< into PourState::trucks; empty: not known
  /// The age of the oldest of them when the last of it came; none: no truck of them was entered.
  std::optional<Seconds> age{};
  bool operator==(const LoadBand&) const = default;
};
/// From the base up in each bay, no gap below the top.
std::vector<LoadBand> load_bands(const PourState& state, std::size_t element);

/// A lift's part in a bay, and what lies on it.
struct CoverBand {
  std::size_t bay = 0;
  int lift = 0;
  Length from, to;
  Seconds came{};                    ///< when concrete first stood at its top
  Seconds sets{};                    ///< when that sets, the early side: what must be done before
  std::optional<Seconds> covered{};  ///< when concrete of the next lift began to lie on it
  bool last = false;                 ///< the top of the whole element: nothing comes on it
  /// How old its top was when it was covered, or is at a moment before that.
  [[nodiscard]] Seconds age(Seconds at) const { return std::min(at, covered.value_or(at)) - came; }
  /// Of its time to set, how much had gone then; over 1: it had set.
  [[nodiscard]] double share(Seconds at) const { return age(at) / (sets - came); }
  bool operator==(const CoverBand&) const = default;
};
std::vector<CoverBand> cover_bands(const PourState& state, std::size_t element);

/// What a row that ran brought on in a bay: full liquid from the top down to `floor`.
struct HeadSpan {
  std::size_t bay = 0;
  Length floor;
  Seconds from{}, to{};  ///< of the run
  UnitWeight weight{};
  std::size_t run = 0;  ///< into PourState::runs
};
/// Of the rows of a side, the lowest floor first. The floor is the row's (row_reach.h), no lower
/// than what had set when the run began: what sets while it goes on is still taken as liquid.
std::vector<HeadSpan> head_spans(const PourState& state, std::size_t element, Side side);

/// A head that falls from the bottom to the top of a part of a bay.
struct HeadBand {
  std::size_t bay = 0;
  Length from, to;
  Pressure low, high;  ///< at `from` and at `to`
  std::size_t run = 0;
  bool operator==(const HeadBand&) const = default;
};
/// The greatest head at each height up to a moment, from spans as head_spans() gives them. Where no
/// row pressed there is no band.
std::vector<HeadBand> heads_until(const ElementState& element, const std::vector<HeadSpan>& spans,
                                  Seconds at);

}  // namespace rb
