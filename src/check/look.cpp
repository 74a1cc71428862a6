#include "check/look.h"

#include <algorithm>

#include "check/memory.h"
#include "pour/row_shaking.h"
#include "trade/rise.h"

namespace rb {

namespace {

void put_dose(LiftReport& report, const LiftLook& look) {
  report.under_share = look.shares.under_share();
  report.min_dose = look.shares.least;
  report.mean_dose = look.shares.mean;
}

void put_rise(LiftReport& report, const PourState& state, AsOf asof, const LiftState& lift) {
  const auto& tops = state.elements[report.element].tops;
  const Seconds window = state.plan->limits.rise_window.value;
  const Seconds took = lift.last_reading - lift.started;
  if (took > Seconds{} || lift.ended) {
    report.rise_window = Velocity{};
    for (const trade::TopCurve& top : tops) {
      report.rise_window = std::max(
          *report.rise_window, trade::worst_rise(top, window, lift.started, lift.last_reading));
    }
  }
  if (took > Seconds{}) {
    report.rise_mean = Velocity{};
    for (std::size_t bay = 0; bay < tops.size(); ++bay) {
      report.rise_mean = std::max(*report.rise_mean, rate(lift.top[bay] - lift.bottom[bay], took));
    }
  }
  if (const auto limit = rise_limit_of(state, asof, report.element, lift)) {
    report.rise_limit = limit->rate;
  }
}

// Whether a row's runs and hangs are those in memory; else they are put there.
bool remembered(RowMemory& memory, const PourState& state, const RowState& row, Seconds until) {
  const auto span = [&](std::size_t run) {
    const RunState& r = state.runs[run];
    return trade::Interval{r.from, std::min(r.to.value_or(until), until)};
  };
  const bool same =
      memory.known && memory.runs.size() == row.runs.size() &&
      memory.hangs.size() == row.hangs.size() &&
      std::equal(
          row.runs.begin(), row.runs.end(), memory.runs.begin(),
          [&](std::size_t run, const trade::Interval& known) { return span(run) == known; }) &&
      std::equal(
          row.hangs.begin(), row.hangs.end(), memory.hangs.begin(),
          [&](std::size_t hang, const HangState& known) { return state.hangs[hang] == known; });
  if (same) return true;
  memory.known = true;
  memory.runs.clear();
  for (const std::size_t run : row.runs) memory.runs.push_back(span(run));
  memory.hangs.clear();
  for (const std::size_t hang : row.hangs) memory.hangs.push_back(state.hangs[hang]);
  return false;
}

// When each row of an element ran and shook; the reach of those that did otherwise than before.
std::vector<RowReach> look_at_rows(Look& look, ElementMemory& memory, std::size_t e) {
  const PourState& state = look.state;
  const Element& element = state.plan->elements[e];
  std::vector<RowReach> changed;
  look.ran.emplace_back();
  look.shaken.emplace_back();
  memory.rows.resize(element.rows.size());
  for (std::size_t r = 0; r < element.rows.size(); ++r) {
    RowMemory& row = memory.rows[r];
    if (!remembered(row, state, state.elements[e].rows[r], look.asof.at)) {
      row.ran = trade::Running{row.runs};
      row.shaken = shaking(state, e, r, look.asof.at);
      const Length z = element.rows[r].z;
      RowReach reach{z, z};
      for (const Motor& motor : element.rows[r].motors) {
        reach.low = std::min(reach.low, z - motor.reach_z - trade::kSamePlace);
        reach.high = std::max(reach.high, z + motor.reach_z + trade::kSamePlace);
      }
      changed.push_back(reach);
    }
    look.ran.back().push_back(row.ran);
    look.shaken.back().push_back(row.shaken);
  }
  return changed;
}

void forget_other_plans(CheckMemory::Inside& memory, const PourState& state) {
  if (memory.plan == state.plan) return;
  memory = {state.plan, std::vector<ElementMemory>(state.elements.size()), {}};
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const Element& element = state.plan->elements[e];
    for (std::size_t r = 0; r < element.rows.size(); ++r) {
      memory.elements[e].bays_of_rows.push_back(bays_reached(element, r));
    }
  }
}

// Up to which moment all tops of an element are as they were at the last check.
Seconds tops_known_until(ElementMemory& memory, const std::vector<trade::TopCurve>& tops) {
  Seconds until = seconds(1e18);
  for (std::size_t bay = 0; bay < tops.size(); ++bay) {
    const auto& now = tops[bay].points();
    if (memory.tops.size() != tops.size() || memory.tops[bay].points().empty()) {
      until = seconds(-1e18);
      break;
    }
    const auto& past = memory.tops[bay].points();
    const auto differs = std::mismatch(past.begin(), past.end(), now.begin(), now.end());
    // Two readings of one moment: only before them is the height what it was.
    const auto same = static_cast<std::size_t>(differs.first - past.begin());
    until = std::min(until, same == 0 ? seconds(-1e18) : past[same - 1].at);
  }
  memory.tops = tops;
  return until;
}

void look_at_heads(Look& look, CheckMemory::Inside& memory) {
  const PourState& state = look.state;
  std::vector<Seconds> known;
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    known.push_back(tops_known_until(memory.elements[e], state.elements[e].tops));
  }
  const UnitWeight weight = heaviest(*state.plan);
  memory.heads.resize(state.runs.size());
  look.runs.reserve(state.runs.size());
  for (std::size_t r = 0; r < state.runs.size(); ++r) {
    const RunState& run = state.runs[r];
    // A run still on is judged at the moment of the check.
    const Seconds end = run.to.value_or(look.asof.at);
    KnownHead& head = memory.heads[r];
    const bool same = head.element == run.element && head.row == run.row && head.end == end &&
                      head.report.run == r && end < known[run.element];
    if (!same) {
      const Length deepest = deepest_over(memory.elements[run.element].bays_of_rows[run.row],
                                          state.elements[run.element], end);
      head = {run.element, run.row, end, {r, weight * deepest, deepest.value() > 0}};
    }
    look.runs.push_back(head.report);
  }
}

// What stood before the first lift began.
std::vector<trade::Band> bands_below(const ElementState& element) {
  std::vector<trade::Band> bands;
  for (std::size_t bay = 0; bay < element.tops.size(); ++bay) {
    bands.push_back({Length{}, element.lifts.empty() ? element.tops[bay].standing()
                                                     : element.lifts.front().bottom[bay]});
  }
  return bands;
}

// Whether the answers kept are for this concrete, seen without working out what they depend on:
// openings and times to set are as they were, and so are all rows but those given.
bool untouched(const LiftLook& look, const trade::Face& face, const std::vector<trade::Band>& bands,
               Seconds least, const std::vector<RowReach>& rows) {
  if (look.joints.empty() || least != look.dose_min || bands != look.bands) return false;
  for (std::size_t bay = 0; bay < bands.size(); ++bay) {
    if (bands[bay].to <= bands[bay].from) continue;
    for (const RowReach& row : rows) {
      if (row.low <= bands[bay].to && row.high >= bands[bay].from) return false;
    }
    if (face.tops[bay].between(bands[bay].from, bands[bay].to) != look.part.tops[bay]) return false;
  }
  return true;
}

// The looks at an element's concrete: first what lies below all lifts.
void look_at_concrete(Look& look, ElementMemory& memory, std::size_t e,
                      const std::vector<RowReach>& changed) {
  const ElementState& element = look.state.elements[e];
  const Seconds least = look.plan().limits.dose_min.value;
  while (memory.lifts.size() < element.lifts.size() + 1) {
    memory.lifts.push_back(std::make_unique<LiftLook>());
  }
  memory.lifts.resize(element.lifts.size() + 1);
  const trade::Face& face = look.faces[e];
  const bool sets_same = face.sets == memory.sets;
  memory.sets = face.sets;
  for (std::size_t i = 0; i < memory.lifts.size(); ++i) {
    auto bands = i == 0 ? bands_below(element) : lift_bands(element.lifts[i - 1]);
    LiftLook& lift = *memory.lifts[i];
    if (!sets_same || !untouched(lift, face, bands, least, changed)) {
      lift.look_at(face, std::move(bands), least);
    }
    look.concrete[e].push_back(&lift);
  }
}

}  // namespace

std::optional<RiseLimit> rise_limit_of(const PourState& state, AsOf asof, std::size_t element,
                                       const LiftState& lift) {
  std::optional<RiseLimit> lowest = rise_limit(state, element, lift.started);
  const Seconds until = asof.live && !lift.ended ? asof.at : lift.last_reading;
  const auto look_again = [&](Seconds at) {
    if (at <= lift.started || at > until) return;
    const auto limit = rise_limit(state, element, at);
    if (limit && (!lowest || limit->rate < lowest->rate)) lowest = limit;
  };
  // Tests are in order of time.
  auto test = std::upper_bound(state.tests.begin(), state.tests.end(), lift.started,
                               [](Seconds m, const TestState& t) { return m < t.at; });
  for (; test != state.tests.end() && test->at <= until; ++test) look_again(test->at);
  for (const TruckState& truck : state.trucks) {
    if (truck.discharged) look_again(*truck.discharged);
  }
  return lowest;
}

Look look_at(const PourState& state, AsOf asof, CheckMemory& memory) {
  CheckMemory::Inside& known = memory.inside();
  forget_other_plans(known, state);
  Look look{state, asof, {}, {}, {}, {}, {}, {}, {}};
  look.concrete.resize(state.elements.size());
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const auto sides = judged_sides(state.plan->elements[e]);
    const auto changed = look_at_rows(look, known.elements[e], e);
    look.faces.push_back(face_of(state, e, sides, look.shaken[e]));
    if (!sides.empty()) look_at_concrete(look, known.elements[e], e, changed);
    for (std::size_t i = 0; i < state.elements[e].lifts.size(); ++i) {
      const LiftState& lift = state.elements[e].lifts[i];
      LiftReport report;
      report.element = e;
      report.index = i;
      report.lift = lift.lift;
      report.placed_from = lift.started;
      report.placed_to = lift.last_reading;
      for (const Length& top : lift.top) report.top = std::max(report.top, top);
      look.lift_looks.push_back(sides.empty() ? nullptr : look.concrete[e][i + 1]);
      if (look.lift_looks.back() != nullptr) put_dose(report, *look.lift_looks.back());
      put_rise(report, state, asof, lift);
      look.lifts.push_back(report);
    }
  }
  look_at_heads(look, known);
  return look;
}

CheckMemory::CheckMemory() : inside_(std::make_unique<Inside>()) {}
CheckMemory::~CheckMemory() = default;
CheckMemory::CheckMemory(CheckMemory&&) noexcept = default;
CheckMemory& CheckMemory::operator=(CheckMemory&&) noexcept = default;

}  // namespace rb
