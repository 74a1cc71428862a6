// What one more tap costs in a pour that is already long: a row's rest folded and checked, live, as
// on the tablet.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "bench/bench.h"
#include "bench/pours.h"
#include "check/check.h"
#include "pour/log/event.h"
#include "pour/log/fold.h"

using namespace rb;

namespace {

struct Taps {
  double fold = 0, check = 0, tap = 0;  // seconds of the processor
  std::size_t findings = 0;
};

Taps measure(const std::vector<Event>& events) {
  Taps taps;
  PourState state;
  taps.fold = bench::best_of(1, [&] { state = *fold(events); });
  taps.check =
      bench::best_of(2, [&] { taps.findings = check(state, AsOf::end(state)).findings.size(); });
  CheckMemory memory;
  const RunState& last = state.runs.back();
  const RowPlace row{state.plan->elements[last.element].id, Side::near_side,
                     state.plan->elements[last.element].rows[last.row].id};
  Moment at = state.moment(state.last);
  (void)check(state, AsOf::now(state, at), memory);
  taps.tap = 1e9;
  for (int i = 0; i < 12; ++i) {
    at += std::chrono::seconds{20};
    Happening what = event::Rest{row};
    if (i % 2 == 0) what = event::Run{row, vibrations_per_minute(6000)};
    const Event tap{EventId{fmt::format("tap{}", i)}, at, PersonId{"f"}, what, {}, std::nullopt};
    const double took = bench::best_of(1, [&] {
      extend(state, tap);
      (void)check(state, AsOf::now(state, at), memory);
    });
    if (i % 2 == 1) taps.tap = std::min(taps.tap, took);
  }
  return taps;
}

const Taps& of(std::size_t count) {
  static std::map<std::size_t, Taps> known;
  const auto [it, fresh] = known.try_emplace(count);
  if (fresh) {
    const auto events = bench::long_pour(count);
    it->second = measure(events);
    fmt::print("{} events: fold {:.2f} ms, check {:.2f} ms, one tap {:.3f} ms, {} findings\n",
               events.size(), it->second.fold * 1e3, it->second.check * 1e3, it->second.tap * 1e3,
               it->second.findings);
  }
  return it->second;
}

const bench::Bench one_tap{"one-tap-recheck-of-1-ms", 1, [] { return of(5000).tap / 1e-3; }};
const bench::Bench growth{"one-tap-recheck-25000-to-5000", 6,
                          [] { return of(25000).tap / of(5000).tap; }};

}  // namespace
