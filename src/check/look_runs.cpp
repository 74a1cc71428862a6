#include "check/look_runs.h"

#include <algorithm>

#include "pour/outlook/pressed.h"

namespace rb {

namespace {

// Two clocks may differ by this on how long a run was.
constexpr Seconds kClocksApart{10};

}  // namespace

bool sets_same(const AsItWas& since) {
  return since.same(Trace::Of::test) && since.same(Trace::Of::penetration) &&
         since.same(Trace::Of::air) && since.same(Trace::Of::truck);
}

Seconds sets_until(const PourState& state, ElementMemory& memory, std::size_t e,
                   const AsItWas& since) {
  if (!memory.late_sets.empty() && sets_same(since)) return AsItWas::kEver;
  auto now = set_steps(state, e, SetSide::late);
  const auto [was, is] =
      std::mismatch(memory.late_sets.begin(), memory.late_sets.end(), now.begin(), now.end());
  Seconds until = AsItWas::kEver;
  if (was != memory.late_sets.end()) until = std::min(until, was->from);
  if (is != now.end()) until = std::min(until, is->from);
  if (is == now.begin()) until = Seconds{-1e18};  // the first holds before it, too
  memory.late_sets = std::move(now);
  return until;
}

Seconds fronts_until(const ElementState& element, Seconds tops_until) {
  const auto lift = std::find_if(element.lifts.rbegin(), element.lifts.rend(),
                                 [&](const LiftState& l) { return l.started <= tops_until; });
  const bool changed = tops_until != AsItWas::kEver && lift != element.lifts.rend();
  return changed ? std::min(tops_until, lift->started) : tops_until;
}

void take_up_runs(const Look& look, CheckMemory::Inside& memory, const AsItWas& since,
                  const std::vector<Seconds>& heads_until) {
  const PourState& state = look.state;
  auto& at_issue = memory.runs_at_issue;
  const std::size_t first = std::min(since.first(Trace::Of::run), state.runs.size());
  at_issue.erase(std::lower_bound(at_issue.begin(), at_issue.end(), first), at_issue.end());
  for (std::size_t r = first; r < state.runs.size(); ++r) at_issue.push_back(r);
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const Seconds until = std::min(since.until(), heads_until[e]) - kClocksApart;
    for (const RowState& row : state.elements[e].rows) {
      for (auto run = row.runs.rbegin(); run != row.runs.rend(); ++run) {
        // One begun after the close, and not rested, ends when it began.
        const RunState& r = state.runs[*run];
        if (r.to.value_or(std::max(look.asof.at, r.from)) < until) break;
        if (*run < first) at_issue.push_back(*run);
      }
    }
  }
  std::sort(at_issue.begin(), at_issue.end());
  at_issue.erase(std::unique(at_issue.begin(), at_issue.end()), at_issue.end());
}

void take_up_trucks(const PourState& state, CheckMemory::Inside& memory, const AsItWas& since) {
  auto& at_issue = memory.trucks_at_issue;
  const std::size_t first = std::min(since.first(Trace::Of::truck), state.trucks.size());
  at_issue.erase(std::lower_bound(at_issue.begin(), at_issue.end(), first), at_issue.end());
  for (std::size_t t = first; t < state.trucks.size(); ++t) at_issue.push_back(t);
}

void look_at_heads(Look& look, CheckMemory::Inside& memory,
                   const std::vector<Seconds>& heads_until) {
  const PourState& state = look.state;
  memory.heads.resize(state.runs.size());
  for (const std::size_t r : memory.runs_at_issue) {
    const RunState& run = state.runs[r];
    // A run still on is judged at the moment of the check.
    const Seconds end = run.to.value_or(look.asof.at);
    const UnitWeight weight = heaviest(state, end);
    KnownHead& head = memory.heads[r];
    const bool same = head.element == run.element && head.row == run.row && head.from == run.from &&
                      head.end == end && head.weight == weight && head.report.run == r &&
                      end < heads_until[run.element];
    if (same) continue;
    const ElementMemory& element = memory.elements[run.element];
    const Length reached =
        deepest_over(element.bays_of_rows[run.row], state.elements[run.element], end);
    const Length deep =
        deepest_pressed(state, run.element, element.bays_of_rows[run.row], run.from, end);
    head = {run.element, run.row, run.from, end, weight, {r, weight * deep, reached > Length{}}};
  }
  look.runs.reserve(memory.heads.size());
  for (const KnownHead& head : memory.heads) look.runs.push_back(head.report);
}

}  // namespace rb
