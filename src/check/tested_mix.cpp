#include "check/tested_mix.h"

namespace rb {

// Of a load that nobody entered it is the only one of the plan, if there is one alone.
const Mix* tested_mix(const PourState& state, const TestState& test) {
  const auto& mixes = state.plan->mixes;
  return mixes.size() == 1 ? &mixes.front() : mix_of(state, test.what.ticket);
}

std::optional<std::size_t> tested_element(const PourState& state, const TestState& test) {
  const auto truck = truck_of(state, test.what.ticket);
  return truck ? state.trucks[*truck].element() : std::nullopt;
}

}  // namespace rb
