#include "check/vibrated.h"

#include <algorithm>

#include "pour/plan/row_reach.h"

namespace rb {

namespace {

bool gained(const LiftState& lift, std::size_t bay) {
  return lift.top[bay] > lift.bottom[bay];
}

}  // namespace

bool vibrated(const Look& look, const LiftReport& report, std::size_t bay) {
  const Element& element = look.element(report);
  const LiftState& lift = look.lift(report);
  for (std::size_t r = 0; r < element.rows.size(); ++r) {
    const Row& row = element.rows[r];
    const auto low = lowest_in_bay(element, row, bay);
    if (!low || *low >= lift.top[bay] || span_of(element, row).high <= lift.bottom[bay]) continue;
    const trade::Running& ran = look.ran[report.element][r];
    if (ran.time().within(lift.started, look.asof.at) > Seconds{}) return true;
  }
  return std::any_of(look.state.inserts.begin(), look.state.inserts.end(),
                     [&](const InsertState& insert) {
                       return insert.element == report.element && insert.what.lift == report.lift &&
                              (!insert.bay || *insert.bay == bay);
                     });
}

std::vector<std::size_t> unvibrated_bays(const Look& look, const LiftReport& report) {
  std::vector<std::size_t> bays;
  // The rows gave some to every spot.
  if (report.min_dose && *report.min_dose > Seconds{}) return bays;
  if (!look.settled(report)) return bays;
  const LiftState& lift = look.lift(report);
  const LiftLook* known = look.lift_looks[static_cast<std::size_t>(&report - look.lifts.data())];
  for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
    if (known != nullptr && known->shaken[bay]) continue;  // the quick answer to most
    if (gained(lift, bay) && !vibrated(look, report, bay)) bays.push_back(bay);
  }
  return bays;
}

bool never_vibrated(const Look& look, const LiftReport& report) {
  const LiftState& lift = look.lift(report);
  const auto bays = unvibrated_bays(look, report);
  std::size_t filled = 0;
  for (std::size_t bay = 0; bay < lift.top.size(); ++bay) filled += gained(lift, bay) ? 1 : 0;
  return filled > 0 && bays.size() == filled;
}

}  // namespace rb
