#include "check/look_runs.h"

#include <algorithm>

#include "pour/outlook/pressed.h"

namespace rb {

namespace {

// Two clocks may differ by this on how long a run was.
constexpr Seconds kClocksApart{10};

// How deep concrete presses as liquid while a row runs, at a moment; what has set is worked out
// where it may matter.
Length depth_pressed(const PourState& state, const ElementMemory& memory, std::size_t e,
                     std::size_t row, Seconds at) {
  std::vector<Length> tops;
  for (const trade::TopCurve& top : state.elements[e].tops) tops.push_back(top.at(at));
  const std::vector<Length> none(tops.size());
  const Length deepest = deepest_pressed(memory.bays_of_rows[row], tops, none);
  if (deepest <= Length{}) return {};
  return deepest_pressed(memory.bays_of_rows[row], tops, set_floors(state, e, at));
}

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
        if (state.runs[*run].to.value_or(look.asof.at) < until) break;
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
    const bool same = head.element == run.element && head.row == run.row && head.end == end &&
                      head.weight == weight && head.report.run == r &&
                      end < heads_until[run.element];
    if (same) continue;
    const ElementMemory& element = memory.elements[run.element];
    const Length reached =
        deepest_over(element.bays_of_rows[run.row], state.elements[run.element], end);
    const Length deep = depth_pressed(state, element, run.element, run.row, end);
    head = {run.element, run.row, end, weight, {r, weight * deep, reached > Length{}}};
  }
  look.runs.reserve(memory.heads.size());
  for (const KnownHead& head : memory.heads) look.runs.push_back(head.report);
}

}  // namespace rb
