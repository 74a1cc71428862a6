#include "check/vibrated.h"

#include <algorithm>

#include "pour/plan/row_reach.h"

namespace rb {

namespace {

// For how long a row ran, and whether in time, is not asked.
bool row_ran_on(const Look& look, const LiftReport& report, std::size_t bay) {
  const Element& element = look.element(report);
  const LiftState& lift = look.lift(report);
  for (std::size_t r = 0; r < element.rows.size(); ++r) {
    const Row& row = element.rows[r];
    const auto low = lowest_in_bay(element, row, bay);
    if (!low || *low >= lift.top[bay] || span_of(element, row).high <= lift.bottom[bay]) continue;
    const trade::Running& ran = look.ran[report.element][r];
    if (ran.time().within(lift.started, look.asof.at) > Seconds{}) return true;
  }
  return false;
}

}  // namespace

bool goes_into(const Look& look, const InsertState& insert, const LiftReport& report,
               std::size_t bay) {
  return before_close(look.state, insert) && insert.element == report.element &&
         insert.what.lift == report.lift && (!insert.bay || *insert.bay == bay);
}

bool inserted(const Look& look, const LiftReport& report, std::size_t bay) {
  return std::any_of(
      look.state.inserts.begin(), look.state.inserts.end(),
      [&](const InsertState& insert) { return goes_into(look, insert, report, bay); });
}

bool BareBays::has(std::size_t bay) const {
  return std::find(bays.begin(), bays.end(), bay) != bays.end();
}

BareBays bare_bays(const Look& look, const LiftReport& report) {
  BareBays bare;
  // The rows gave some to every spot.
  if (report.min_dose && *report.min_dose > Seconds{}) return bare;
  if (!look.settled(report)) return bare;
  const LiftState& lift = look.lift(report);
  const LiftLook* known = look.lift_looks[static_cast<std::size_t>(&report - look.lifts.data())];
  bare.all = true;
  for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
    if (lift.top[bay] <= lift.bottom[bay]) continue;
    const bool shaken = known != nullptr && known->shaken[bay];  // the quick answer to most
    if (shaken || row_ran_on(look, report, bay) || inserted(look, report, bay)) {
      bare.all = false;
    } else {
      bare.bays.push_back(bay);
    }
  }
  bare.all = bare.all && !bare.bays.empty();
  return bare;
}

}  // namespace rb
