#include "pour/outlook/loads.h"

#include <algorithm>
#include <limits>

namespace rb {

std::vector<LoadSpan> load_spans(const PourState& state, std::size_t element) {
  constexpr Seconds kUnended{std::numeric_limits<double>::infinity()};
  std::vector<LoadSpan> spans;
  for (std::size_t t = 0; t < state.trucks.size(); ++t) {
    for (const PartState& part : state.trucks[t].parts) {
      if (part.may_be_in(element)) spans.push_back({part.from, part.to.value_or(kUnended), t});
    }
  }
  std::stable_sort(spans.begin(), spans.end(),
                   [](const LoadSpan& a, const LoadSpan& b) { return a.from < b.from; });
  const Seconds oldest = state.plan->limits.load_age_max.value;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    LoadSpan& span = spans[i];
    if (span.to != kUnended) continue;
    const TruckState& truck = state.trucks[span.truck];
    const Seconds batched = truck.what ? state.told(*truck.ref, truck.what->batched) : span.from;
    span.to = std::max(span.from, batched + oldest);
    if (i + 1 < spans.size()) span.to = std::min(span.to, spans[i + 1].from);
  }
  return spans;
}

std::vector<std::size_t> loads_at(const PourState& state, std::size_t element, Seconds came) {
  return loads_at(state, load_spans(state, element), came);
}

std::vector<std::size_t> loads_at(const PourState& state, const std::vector<LoadSpan>& spans,
                                  Seconds came) {
  std::vector<std::size_t> loads;
  const LoadSpan* before = nullptr;
  for (const LoadSpan& span : spans) {
    if (span.from > came) break;
    if (span.to >= came) loads.push_back(span.truck);
    if (before == nullptr || span.to >= before->to) before = &span;
  }
  if (!loads.empty() || spans.empty()) return loads;
  if (before != nullptr) return {before->truck};
  const TruckState& first = state.trucks[spans.front().truck];
  if (first.what && state.told(*first.ref, first.what->batched) <= came) {
    return {spans.front().truck};
  }
  return {};
}

bool may_be_of(const PourState& state, const TestState& test, std::size_t element) {
  const auto truck = truck_of(state, test.what.ticket);
  return !truck || state.trucks[*truck].parts.empty() || state.trucks[*truck].may_be_in(element);
}

}  // namespace rb
