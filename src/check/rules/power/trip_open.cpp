// trip-open: an inverter tripped, and a row it left short was not started again.
#include <algorithm>

#include "check/row_time.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

// A hand is on its way: no word of it sooner (our own choice).
constexpr Seconds kOnItsWay{120};

// The last run of the row for a lift, where an inverter stopped some of its motors: whoever starts
// the row again begins another.
const RunState* stopped_run(const Look& look, const LiftReport& report, std::size_t row,
                            Seconds until) {
  const auto& runs = look.state.elements[report.element].rows[row].runs;
  for (auto at = runs.rbegin(); at != runs.rend(); ++at) {
    const RunState& run = look.state.runs[*at];
    if (run.from >= until) continue;
    if (run.from < report.placed_from) return nullptr;
    return run.trips.empty() ? nullptr : &run;
  }
  return nullptr;
}

void look_trip_open(const Look& look, const Rule& rule, Findings& out) {
  const auto& limit = look.plan().limits.dose_min;
  for_rows_of_lifts(look, [&](const LiftReport& report, std::size_t row, Seconds) {
    const Seconds until = look.lift(report).next_start.value_or(look.asof.at);
    const RunState* run = stopped_run(look, report, row, until);
    if (run == nullptr) return;
    const RunTrip& trip = run->trips.front();
    if (look.asof.live && look.asof.at - trip.at < kOnItsWay) return;
    const Inverter& inverter = look.plan().power[trip.inverter];
    // Of the motors it stopped the one that ran least.
    std::optional<Seconds> least;
    const auto& motors = look.element(report).rows[row].motors;
    for (std::size_t m = 0; m < motors.size(); ++m) {
      if (!feeds(inverter, motors[m].id)) continue;
      const Seconds ran =
          look.shaken[report.element][row][m].time().within(report.placed_from, until);
      if (ran > Seconds{}) least = std::min(least.value_or(ran), ran);
    }
    if (!least || !under(*least, limit.value)) return;
    Finding f = row_time_finding(look, rule, report, row, *least, limit);
    f.from = trip.at;
    f.inverter = inverter.id;
    f.ref = run->ref;
    f.sentence = said(
        "{element} lift {lift}, row {row} ({side} side): inverter {inverter} tripped after its "
        "motors had run {measured}, limit {limit}, and they were not started again");
    out.push_back(std::move(f));
  });
}

}  // namespace

extern const Rule kTripOpen{
    {"trip-open", said("Tripped, not started again"), Severity::mend, Cost::perhaps,
     "a row that stopped by itself and that everybody took for done",
     said("the plan's run sheet (rows[].serves); 2 minutes to answer: a choice of this project"),
     "dose_min_s of the row's motors for the lift", "plan, by the engineer",
     said(
         "Have a licensed electrician look at the feed, then run the row for what is missing while "
         "the concrete is plastic and the head on the row allows it")},
    look_trip_open};

}  // namespace rb
