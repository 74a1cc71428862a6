#include "pour/log/as_it_was.h"

#include <algorithm>

namespace rb {

AsItWas::AsItWas(const PourState& state, std::uint64_t stamp) : state_(state) {
  const auto& traces = state.memory.traces;
  const auto seen = std::lower_bound(traces.begin(), traces.end(), stamp,
                                     [](const Trace& t, std::uint64_t s) { return t.stamp < s; });
  known_ = seen != traces.end() && seen->stamp == stamp;
  if (known_) since_ = {seen + 1, traces.end()};
}

Seconds AsItWas::until() const {
  if (!known_) return -kEver;
  Seconds until = kEver;
  for (const Trace& trace : since_) until = std::min(until, trace.from);
  return until;
}

std::size_t AsItWas::first(Trace::Of of) const {
  if (!known_) return 0;
  std::size_t first = kAll;
  for (const Trace& trace : since_) {
    if (trace.of == of) first = std::min(first, trace.index);
  }
  return first;
}

Seconds AsItWas::tops_until(std::size_t element) const {
  if (!known_) return -kEver;
  Seconds from = kEver;
  for (const Trace& trace : since_) {
    if (trace.of == Trace::Of::top && trace.index == element) from = std::min(from, trace.from);
  }
  if (from == kEver) return kEver;
  // Between the last reading that stands and the first that changed the height may be another.
  Seconds until = from;
  for (const trade::TopCurve& top : state_.elements[element].tops) {
    const auto& points = top.points();
    const auto changed =
        std::lower_bound(points.begin(), points.end(), from,
                         [](const trade::SurfacePoint& p, Seconds at) { return p.at < at; });
    if (changed != points.begin()) until = std::min(until, (changed - 1)->at);
  }
  return until;
}

}  // namespace rb
