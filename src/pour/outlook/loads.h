// Which load the concrete of an element came from, by when it came.
#pragma once

#include <vector>

#include "pour/log/state.h"

namespace rb {

/// All that comes into an element from one moment to another is of this load. One whose end nobody
/// told goes to the next into that element, at most to the oldest a load may be.
struct LoadSpan {
  Seconds from{}, to{};
  std::size_t truck = 0;  ///< into PourState::trucks
  bool operator==(const LoadSpan&) const = default;
};

/// In order of their begin. Loads of no named element may have gone into any.
std::vector<LoadSpan> load_spans(const PourState& state, std::size_t element);

/// The trucks whose concrete may have come at a moment: those whose span holds it; none does: the
/// one that ended last before; before all: the first, if batched by then. Empty: not known.
std::vector<std::size_t> loads_at(const PourState& state, std::size_t element, Seconds came);
/// The same with load_spans() known.
std::vector<std::size_t> loads_at(const PourState& state, const std::vector<LoadSpan>& spans,
                                  Seconds came);

/// Whether what was measured on a load may be of an element: its load went there, or nobody told
/// where.
bool may_be_of(const PourState& state, const TestState& test, std::size_t element);

}  // namespace rb
