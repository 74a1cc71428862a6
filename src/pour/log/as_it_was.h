// How much of a state stands as it did when it was looked at before, so that who remembers what was
// worked out of it need look again only at the rest. What is told as changed may have come out the
// same; what is not told has not changed.
#pragma once

#include <cstdint>
#include <limits>
#include <span>

#include "pour/log/state.h"

namespace rb {

class AsItWas {
 public:
  /// Since the look at which `stamp` was read. A stamp of another state, of one that was folded
  /// anew, or too old: nothing is known.
  AsItWas(const PourState& state, std::uint64_t stamp);

  /// To be kept with what is remembered of a state.
  static std::uint64_t stamp(const PourState& state) {
    return state.memory.traces.empty() ? 0 : state.memory.traces.back().stamp;
  }

  [[nodiscard]] bool known() const { return known_; }
  /// What happened before this moment stands as it did.
  [[nodiscard]] Seconds until() const;
  /// The items of a list before this one do; past all items when nothing changed.
  [[nodiscard]] std::size_t first(Trace::Of of) const;
  [[nodiscard]] bool same(Trace::Of of) const { return first(of) == kAll; }
  /// An element's tops do, at every moment before this one.
  [[nodiscard]] Seconds tops_until(std::size_t element) const;
  /// All that changed.
  [[nodiscard]] std::span<const Trace> traces() const { return since_; }

  static constexpr std::size_t kAll = std::numeric_limits<std::size_t>::max();
  static constexpr Seconds kEver{1e18};

 private:
  const PourState& state_;
  bool known_ = false;
  std::span<const Trace> since_;
};

}  // namespace rb
