// Traces of what changed (as_it_was.h reads them).
#include <algorithm>
#include <atomic>

#include "pour/log/as_it_was.h"
#include "pour/log/fold_happening.h"

namespace rb {

namespace {

// More are left by nothing but a fold of all, or a correction far back.
constexpr std::size_t kKept = 512;

using Of = Trace::Of;

class Traced {
 public:
  explicit Traced(const PourState& state) : state_(state) {}

  Trace operator()(const changed::Grew& grew) const {
    if (grew.list == changed::List::tests) return last(Of::test, state_.tests);
    if (grew.list == changed::List::air) return last(Of::air, state_.air);
    if (grew.list == changed::List::penetrations) {
      return last(Of::penetration, state_.penetrations);
    }
    return {};
  }
  Trace operator()(const changed::HangBegan&) const { return hang(state_.hangs.size() - 1); }
  Trace operator()(const changed::HangEnded& was) const { return hang(was.hang); }
  Trace operator()(const changed::RunBegan&) const { return run(state_.runs.size() - 1); }
  Trace operator()(const changed::RunEnded& was) const { return run(was.run); }
  Trace operator()(const changed::SpeedNamed& was) const { return run(was.run); }
  Trace operator()(const changed::RunTripped& was) const { return run(was.run); }
  Trace operator()(const changed::LiftBegan& was) const {
    return {.of = Of::top, .index = was.element};
  }
  Trace operator()(const changed::BayBegan& was) const {
    return {.of = Of::top, .index = was.element};
  }
  Trace operator()(const changed::TopRead& was) const {
    return {.of = Of::top, .index = was.element};
  }
  Trace operator()(const changed::TruckCame&) const { return last(Of::truck, state_.trucks); }
  Trace operator()(const changed::TruckEntered& was) const { return truck(was.truck); }
  Trace operator()(const changed::Discharged& was) const { return truck(was.truck); }
  Trace operator()(const changed::DischargeEnded& was) const { return truck(was.truck); }
  template <class Other>
  Trace operator()(const Other&) const {
    return {};
  }

 private:
  template <class Item>
  static Trace last(Of of, const std::vector<Item>& list) {
    return {.of = of, .index = list.size() - 1};
  }
  static Trace truck(std::size_t index) { return {.of = Of::truck, .index = index}; }
  [[nodiscard]] Trace hang(std::size_t index) const {
    const HangState& hang = state_.hangs[index];
    return {.of = Of::hang, .index = index, .element = hang.element, .row = hang.row};
  }
  [[nodiscard]] Trace run(std::size_t index) const {
    const RunState& run = state_.runs[index];
    return {.of = Of::run, .index = index, .element = run.element, .row = run.row};
  }
  const PourState& state_;
};

void leave(PourState& state, Trace trace, Seconds from) {
  static std::atomic<std::uint64_t> last{0};
  trace.stamp = ++last;
  trace.from = from;
  auto& traces = state.memory.traces;
  if (traces.size() >= 2 * kKept) traces.erase(traces.begin(), traces.end() - kKept);
  traces.push_back(trace);
}

}  // namespace

void leave_trace(PourState& state, const StateChange& change, Seconds from) {
  // By the steady clock a run may have ended a moment before its rest was tapped.
  if (const auto* ended = std::get_if<changed::RunEnded>(&change)) {
    from = std::min(from, state.runs[ended->run].to.value_or(from));
  }
  leave(state, std::visit(Traced{state}, change), from);
}

void leave_trace_of_all(PourState& state) {
  leave(state, {}, -AsItWas::kEver);
}

}  // namespace rb
