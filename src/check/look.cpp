#include "check/look.h"

#include "trade/rise.h"

namespace rb {

namespace {

void put_dose(LiftReport& report, const trade::DoseField& field, const LiftState& lift,
              Seconds dose_min) {
  const trade::DoseShares shares = trade::dose_shares(field, lift_bands(lift), dose_min);
  report.under_share = shares.under_share();
  report.min_dose = shares.least;
  report.mean_dose = shares.mean;
}

void put_rise(LiftReport& report, const PourState& state, const LiftState& lift) {
  const auto& tops = state.elements[report.element].tops;
  const Seconds window = state.plan->limits.rise_window.value;
  const Seconds took = lift.last_reading - lift.started;
  if (took > Seconds{}) {
    report.rise_window = Velocity{};
    report.rise_mean = Velocity{};
    for (std::size_t bay = 0; bay < tops.size(); ++bay) {
      report.rise_window =
          std::max(*report.rise_window,
                   trade::worst_rise(tops[bay], window, lift.started, lift.last_reading));
      report.rise_mean = std::max(*report.rise_mean, rate(lift.top[bay] - lift.bottom[bay], took));
    }
  }
  if (const auto limit = rise_limit(state, report.element, lift.started)) {
    report.rise_limit = limit->rate;
  }
}

// When each row of an element ran.
std::vector<trade::RunningTime> rows_ran(const PourState& state, std::size_t element,
                                         Seconds until) {
  std::vector<std::vector<trade::Interval>> spans(state.plan->elements[element].rows.size());
  for (const RunState& run : state.runs) {
    if (run.element != element) continue;
    spans[run.row].push_back({run.from, std::min(run.to.value_or(until), until)});
  }
  std::vector<trade::RunningTime> ran;
  ran.reserve(spans.size());
  for (auto& row : spans) ran.emplace_back(std::move(row));
  return ran;
}

}  // namespace

Look look_at(const PourState& state, AsOf asof) {
  Look look{state, asof, {}, {}, {}, {}, {}};
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const auto sides = judged_sides(state.plan->elements[e]);
    look.fields.emplace_back();
    look.faces.push_back(face_of(state, e, sides, asof.at));
    if (!sides.empty()) look.fields[e] = trade::dose_field(look.faces[e]);
    look.ran.push_back(rows_ran(state, e, asof.at));
    for (std::size_t i = 0; i < state.elements[e].lifts.size(); ++i) {
      const LiftState& lift = state.elements[e].lifts[i];
      LiftReport report;
      report.element = e;
      report.index = i;
      report.lift = lift.lift;
      report.placed_from = lift.started;
      report.placed_to = lift.last_reading;
      for (const Length& top : lift.top) report.top = std::max(report.top, top);
      if (look.fields[e]) {
        put_dose(report, *look.fields[e], lift, state.plan->limits.dose_min.value);
      }
      put_rise(report, state, lift);
      look.lifts.push_back(report);
    }
  }
  for (std::size_t r = 0; r < state.runs.size(); ++r) {
    look.runs.push_back({r, head_of_run(state, state.runs[r], asof.at)});
  }
  return look;
}

}  // namespace rb
