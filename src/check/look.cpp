#include "check/look.h"

#include <algorithm>
#include <unordered_set>

#include "check/look_power.h"
#include "check/look_runs.h"
#include "check/memory.h"
#include "pour/log/as_it_was.h"
#include "pour/outlook/insertions.h"
#include "pour/outlook/row_shaking.h"
#include "trade/pressure/rise.h"

namespace rb {

namespace {

// While a lift is placed it is held to what holds now.
Seconds rise_judged_until(AsOf asof, const LiftState& lift) {
  return asof.live && !lift.ended ? asof.at : lift.last_reading;
}

void put_dose(LiftReport& report, const LiftLook& look) {
  report.under_share = look.shares.under_share();
  report.min_dose = look.shares.least;
  report.mean_dose = look.shares.mean;
}

// Of the bays of a lift whose start is known, or of those whose start is not.
std::optional<Velocity> fastest(const PourState& state, std::size_t element, const LiftState& lift,
                                bool start_missing) {
  if (lift.last_reading <= lift.started && !lift.ended) return std::nullopt;
  const Seconds window = state.plan->limits.rise_window.value;
  std::optional<Velocity> worst;
  for (std::size_t bay = 0; bay < lift.bays.size(); ++bay) {
    if (lift.start_missing(bay) != start_missing || lift.empty(bay)) continue;
    const trade::TopCurve& top = state.elements[element].tops[bay];
    worst = std::max(worst.value_or(Velocity{}),
                     trade::worst_rise(top, window, lift.started, lift.last_reading));
  }
  return worst;
}

// The fastest bay from when concrete came to it to its last reading.
std::optional<Velocity> mean_rise(const LiftState& lift) {
  std::optional<Velocity> most;
  for (std::size_t bay = 0; bay < lift.bays.size(); ++bay) {
    if (lift.start_missing(bay) || lift.empty(bay)) continue;
    const Seconds last =
        lift.bay_wise ? lift.bays[bay].read.value_or(lift.started) : lift.last_reading;
    const Seconds took = last - lift.began(bay);
    if (took <= Seconds{}) continue;
    most = std::max(most.value_or(Velocity{}), rate(lift.top[bay] - lift.bottom[bay], took));
  }
  return most;
}

void put_rise(LiftReport& report, const Look& look, std::optional<KnownRise>& known,
              const AsItWas& since, Seconds tops_until) {
  const LiftState& lift = look.lift(report);
  const PourState& state = look.state;
  const Seconds until = rise_judged_until(look.asof, lift);
  const bool same =
      known && known->started == lift.started && known->last_reading == lift.last_reading;
  const Seconds judged = lift.last_reading + state.plan->limits.rise_window.value;
  const bool tops_same = same && judged < tops_until;
  const bool limit_same = same && until == known->until && sets_same(since);
  known =
      KnownRise{lift.started,
                lift.last_reading,
                tops_same ? known->window : fastest(state, report.element, lift, false),
                tops_same ? known->at_least : fastest(state, report.element, lift, true),
                until,
                limit_same ? known->limit : rise_limit_of(state, look.asof, report.element, lift)};
  report.rise_window = known->window;
  report.rise_at_least = known->at_least;
  report.rise_mean = mean_rise(lift);
  if (known->limit) report.rise_limit = known->limit->rate;
}

// In a live look who runs a row may still rest it.
Unended unended(AsOf asof) {
  return asof.live ? Unended::runs_on : Unended::to_next_event;
}

// Whether a row's runs and hangs are those in memory; else they are put there.
bool remembered(RowMemory& memory, const PourState& state, const RowState& row, AsOf asof) {
  std::vector<trade::Interval> runs;
  std::vector<RunTrip> trips;
  for (const std::size_t index : row.runs) {
    const RunState& run = state.runs[index];
    for_weighed(state, run, counts_until(state, run, asof.at, unended(asof)),
                [&](const trade::Interval& piece) { runs.push_back(piece); });
    trips.insert(trips.end(), run.trips.begin(), run.trips.end());
  }
  const bool same = memory.known && memory.runs == runs && memory.trips == trips &&
                    memory.hangs.size() == row.hangs.size() &&
                    std::equal(row.hangs.begin(), row.hangs.end(), memory.hangs.begin(),
                               [&](std::size_t hang, const HangState& known) {
                                 return state.hangs[hang] == known;
                               });
  const bool unrested = std::any_of(row.runs.begin(), row.runs.end(),
                                    [&](std::size_t run) { return !state.runs[run].rest; });
  if (same && !unrested && !memory.unrested) return true;
  memory.known = true;
  memory.unrested = unrested;
  memory.runs = std::move(runs);
  memory.trips = std::move(trips);
  memory.hangs.clear();
  for (const std::size_t hang : row.hangs) memory.hangs.push_back(state.hangs[hang]);
  return false;
}

// When each row of an element ran and shook; the reach of those that did otherwise than before.
std::vector<RowReach> look_at_rows(Look& look, ElementMemory& memory, std::size_t e,
                                   const AsItWas& since) {
  const PourState& state = look.state;
  const Element& element = state.plan->elements[e];
  std::vector<RowReach> changed;
  look.ran.emplace_back();
  look.shaken.emplace_back();
  look.drew.emplace_back();
  memory.rows.resize(element.rows.size());
  std::vector<bool> same(element.rows.size(), since.known());
  for (const Trace& trace : since.traces()) {
    if ((trace.of == Trace::Of::run || trace.of == Trace::Of::hang) && trace.element == e) {
      same[trace.row] = false;
    }
  }
  for (std::size_t r = 0; r < element.rows.size(); ++r) {
    RowMemory& row = memory.rows[r];
    // A run still on grows with every look, and any event may end one that nobody rested.
    const bool still = same[r] && !row.unrested;
    if (!still && !remembered(row, state, state.elements[e].rows[r], look.asof)) {
      row.ran = trade::Running{row.runs};
      row.shaken = shaking(state, e, r, look.asof.at, unended(look.asof));
      row.drew = row.unrested ? shaking(state, e, r, look.asof.at, Unended::whole) : row.shaken;
      const RowSpan span = span_of(element, element.rows[r]);
      changed.push_back({span.low - trade::kSamePlace, span.high + trade::kSamePlace});
    }
    look.ran.back().push_back(row.ran);
    look.shaken.back().push_back(row.shaken);
    look.drew.back().push_back(row.drew);
  }
  return changed;
}

void forget_other_plans(CheckMemory::Inside& memory, const PourState& state) {
  if (memory.plan.get() == state.plan.get()) return;
  memory = {};
  memory.plan = state.plan;
  memory.elements.resize(state.elements.size());
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const Element& element = state.plan->elements[e];
    for (std::size_t r = 0; r < element.rows.size(); ++r) {
      memory.elements[e].bays_of_rows.push_back(bays_reached(element, element.rows[r]));
    }
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
               const std::vector<std::vector<trade::Band>>& healed, Seconds least,
               const std::vector<RowReach>& rows, Seconds tops_until) {
  if (look.joints.empty() || least != look.dose_min || bands != look.bands ||
      healed != look.healed) {
    return false;
  }
  for (std::size_t bay = 0; bay < bands.size(); ++bay) {
    if (bands[bay].to <= bands[bay].from) continue;
    for (const RowReach& row : rows) {
      if (row.low <= bands[bay].to && row.high >= bands[bay].from) return false;
    }
    if (tops_until == AsItWas::kEver) continue;
    if (face.tops[bay].between(bands[bay].from, bands[bay].to) != look.part.tops[bay]) return false;
  }
  return true;
}

// Of what insertions consolidated the parts inside bands.
std::vector<std::vector<trade::Band>> inside(const std::vector<std::vector<trade::Band>>& healed,
                                             const std::vector<trade::Band>& bands) {
  std::vector<std::vector<trade::Band>> part(bands.size());
  for (std::size_t bay = 0; bay < bands.size(); ++bay) {
    for (const trade::Band& band : healed[bay]) {
      const trade::Band in{std::max(band.from, bands[bay].from), std::min(band.to, bands[bay].to)};
      if (in.to > in.from) part[bay].push_back(in);
    }
  }
  return part;
}

// The looks at an element's concrete: first what lies below all lifts.
void look_at_concrete(Look& look, ElementMemory& memory, std::size_t e,
                      const std::vector<RowReach>& changed, const AsItWas& since) {
  const ElementState& element = look.state.elements[e];
  const Seconds least = look.plan().limits.dose_min.value;
  while (memory.lifts.size() < element.lifts.size() + 1) {
    memory.lifts.push_back(std::make_unique<LiftLook>());
  }
  memory.lifts.resize(element.lifts.size() + 1);
  const trade::Face& face = look.faces[e];
  const bool same = face.sets == memory.sets;
  memory.sets = face.sets;
  const bool joints_same = sets_same(since);
  const auto by_insertions = healed(look.state, e, face.sets);
  for (std::size_t i = 0; i < memory.lifts.size(); ++i) {
    auto bands = i == 0 ? bands_below(element) : lift_bands(element.lifts[i - 1]);
    LiftLook& lift = *memory.lifts[i];
    if (!joints_same || (lift.knitted && since.until() <= *lift.knitted)) lift.knitted.reset();
    auto here = inside(by_insertions, bands);
    if (!same || !untouched(lift, face, bands, here, least, changed, since.tops_until(e))) {
      lift.look_at(face, std::move(bands), least, std::move(here));
    }
    look.concrete[e].push_back(&lift);
  }
}

}  // namespace

std::optional<RiseLimit> rise_limit_of(const PourState& state, AsOf asof, std::size_t element,
                                       const LiftState& lift) {
  std::optional<RiseLimit> lowest = rise_limit(state, element, lift.started);
  const Seconds until = rise_judged_until(asof, lift);
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
    for (const PartState& part : truck.parts) look_again(part.from);
  }
  return lowest;
}

Look look_at(const PourState& state, AsOf asof, CheckMemory& memory) {
  CheckMemory::Inside& known = memory.inside();
  const AsOf asked = asof;
  // The close ends what runs: nothing said after it, nor the time that goes by, changes a figure.
  Seconds last = state.last;
  if (state.closed) {
    last = std::min(last, state.clock(*state.closed));
    asof.at = std::min(asof.at, state.clock(*state.closed));
  }
  forget_other_plans(known, state);
  const AsItWas since{state, asof.at < last ? 0 : known.stamp};
  Look look{state, asof, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, nullptr, {}, {}, asked};
  look.concrete.resize(state.elements.size());
  std::vector<Seconds> tops_until, heads_until;
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    ElementMemory& element = known.elements[e];
    tops_until.push_back(since.tops_until(e));
    heads_until.push_back(std::min(fronts_until(state.elements[e], tops_until.back()),
                                   sets_until(state, element, e, since)));
    const auto sides = judged_sides(state.plan->elements[e]);
    const auto changed = look_at_rows(look, element, e, since);
    const bool sets_known = !element.sets.empty() && sets_same(since);
    look.faces.push_back(
        face_of(state, e, sides, look.shaken[e], sets_known ? element.sets : set_steps(state, e)));
    if (!sides.empty()) look_at_concrete(look, element, e, changed, since);
    element.rises.resize(state.elements[e].lifts.size());
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
      put_rise(report, look, element.rises[i], since, tops_until.back());
      look.lifts.push_back(report);
    }
  }
  take_up_runs(look, known, since, heads_until);
  take_up_trucks(state, known, since);
  look_at_heads(look, known, heads_until);
  for (auto* feeds : {&known.feeds.inverters, &known.feeds.trunks, &known.feeds.generators}) {
    for (FeedMemory& feed : *feeds) {
      if (since.until() < feed.until) feed = {};
    }
  }
  look.runs_at_issue = known.runs_at_issue;
  look.trucks_at_issue = known.trucks_at_issue;
  look.feeds = &known.feeds;
  look_at_power(look);
  known.stamp = asof.at < last ? 0 : AsItWas::stamp(state);
  return look;
}

void settle(const Look& look, CheckMemory& memory, const std::vector<Finding>& findings) {
  CheckMemory::Inside& known = memory.inside();
  const PourState& state = look.state;
  std::unordered_set<EventRef> found;
  for (const Finding& finding : findings) {
    if (finding.ref) found.insert(*finding.ref);
  }
  // One that was over is taken up again when the height at its end may have changed.
  std::erase_if(known.runs_at_issue, [&](std::size_t r) {
    return state.runs[r].to && !found.contains(state.runs[r].ref);
  });
  std::erase_if(known.trucks_at_issue, [&](std::size_t t) {
    const TruckState& truck = state.trucks[t];
    return truck.what && truck.ended() && !truck.parts.empty() && !found.contains(*truck.ref) &&
           std::none_of(truck.parts.begin(), truck.parts.end(),
                        [&](const PartState& part) { return found.contains(part.ref); });
  });
}

CheckMemory::CheckMemory() : inside_(std::make_unique<Inside>()) {}
CheckMemory::~CheckMemory() = default;
CheckMemory::CheckMemory(CheckMemory&&) noexcept = default;
CheckMemory& CheckMemory::operator=(CheckMemory&&) noexcept = default;

}  // namespace rb
