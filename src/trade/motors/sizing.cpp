#include "trade/motors/sizing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "trade/motors/force.h"
#include "trade/pressure/pressure_case.h"
#include "trade/shape/bounds.h"
#include "trade/shape/patch.h"

namespace rb::trade {

namespace {

constexpr Length kClosestMotors = millimetres(300.0);
// More rows than this over the fewest that cover the form bring nothing.
constexpr int kMoreRows = 12;

std::optional<Error> fault_of(const SizingCase& c) {
  const Pressure rating = c.rating.value_or(kilopascals(60));
  return outside(said("sizing"),
                 {{said("length"), in_metres(c.length), 0.1, 500, "m"},
                  {said("height"), in_metres(c.height), 0.1, 50, "m"},
                  {said("thickness"), in_metres(c.thickness), 0.05, 10, "m"},
                  {said("unit weight"), in_kilonewtons_per_m3(c.unit_weight), 10, 45, "kN/m3"},
                  {said("form mass"), in_kilograms_per_m2(c.form_mass), 1, 2000, "kg/m2"},
                  {said("force"), in_kilonewtons(c.motor.force), 0.05, 500, "kN"},
                  {said("reach along"), in_metres(c.motor.reach_x), 0.1, 10, "m"},
                  {said("reach up"), in_metres(c.motor.reach_z), 0.1, 10, "m"},
                  {said("knitting depth"), in_metres(c.knit_depth), 0, 1, "m"},
                  {said("reach up over half the knitting depth"),
                   in_metres(c.motor.reach_z - c.knit_depth / 2.0), 0.05, 10, "m"},
                  {said("deepest lift"), in_metres(c.deepest_lift), 0.05, 5, "m"},
                  {said("form rating"), in_kilopascals(rating), 0.001, 10000, "kPa"}});
}

double force_share(const SizingCase& c, std::size_t motors) {
  const Area share =
      c.length / static_cast<double>(motors) * std::min(c.motor.reach_z * 2.0, c.height);
  const MassPerArea concrete =
      quantity_of<MassPerArea>(c.unit_weight.value() / kStandardGravity * in_metres(c.thickness));
  const auto needed = force_needed(c.form_mass * share, concrete * share);
  return needed ? double{c.motor.force / *needed} : 0.0;  // a share too heavy to reckon with
}

// As many along the form as reach all of it and are strong enough.
Result<std::size_t> motors_along(const SizingCase& c) {
  const double touching = c.length / (c.motor.reach_x * 2.0);
  auto motors = static_cast<std::size_t>(std::max(1.0, std::ceil(touching - 1e-9)));
  while (force_share(c, motors) < 1.0) {
    ++motors;
    if (c.length / static_cast<double>(motors) < kClosestMotors) {
      return fail(
          Error::Kind::refused, inside(said("sizing"), said("force")),
          {said("motors of {force} are too weak for {mass} of form and {thickness} of concrete, "
                "even {apart} apart"),
           {{"force", amount(c.motor.force)},
            {"mass", amount(c.form_mass)},
            {"thickness", amount(c.thickness)},
            {"apart", amount(kClosestMotors)}}},
          said("Choose stronger motors, or ask their maker"));
    }
  }
  return motors;
}

// Tops at whole centimetres: they are read off a tape.
std::vector<Length> even_lifts(Length height, int count) {
  std::vector<Length> tops;
  for (int lift = 1; lift < count; ++lift) {
    tops.push_back(metres(std::round(in_metres(height) * lift / count * 100) / 100));
  }
  tops.push_back(height);
  return tops;
}

std::vector<SizedRow> even_rows(const SizingCase& c, int count) {
  const Length reach = c.motor.reach_z;
  std::vector<SizedRow> rows;
  for (int i = 0; i < count; ++i) {
    SizedRow row;
    const double share = count == 1 ? 0.5 : static_cast<double>(i) / (count - 1);
    const Length lowest = std::min(reach, c.height / 2.0);
    row.z = lowest + (c.height - lowest * 2.0) * share;
    row.low = std::max(Length{}, row.z - reach);
    row.high = std::min(c.height, row.z + reach);
    row.pressed = std::max(Length{}, row.z - c.motor.reach_pressure.value_or(reach * 2.0));
    rows.push_back(std::move(row));
  }
  return rows;
}

// Gives a lift its rows; false when they leave a gap.
bool cover(std::vector<SizedRow>& rows, int lift, Length from, Length top) {
  Length covered = from;
  while (covered < top - kSamePlace) {
    SizedRow* best = nullptr;
    for (SizedRow& row : rows) {
      if (row.low > covered + kSamePlace || row.high <= covered + kSamePlace) continue;
      if (best == nullptr || row.high > best->high ||
          (row.high == best->high && row.low > best->low)) {
        best = &row;
      }
    }
    if (best == nullptr) return false;
    best->lifts.push_back(lift);
    covered = best->high;
  }
  return true;
}

bool serve(const SizingCase& c, Sizing& s) {
  Length bottom;
  for (std::size_t i = 0; i < s.lifts.size(); ++i) {
    const Length from = std::max(Length{}, bottom - c.knit_depth);
    if (!cover(s.rows, static_cast<int>(i) + 1, from, s.lifts[i])) return false;
    bottom = s.lifts[i];
  }
  const auto idle = [](const SizedRow& row) { return row.lifts.empty(); };
  s.rows.erase(std::remove_if(s.rows.begin(), s.rows.end(), idle), s.rows.end());
  for (SizedRow& row : s.rows) {
    const Length top = s.lifts[static_cast<std::size_t>(row.lifts.back()) - 1];
    row.head = full_liquid_head(c.unit_weight, top - row.pressed);
    s.head = std::max(s.head, row.head);
  }
  return true;
}

// A row takes the set that has been free longest, else a new one.
void share_sets(Sizing& s, Leapfrog leapfrog) {
  std::vector<int> free_from;  // the first lift in which a set may hang anew
  std::sort(s.rows.begin(), s.rows.end(),
            [](const SizedRow& a, const SizedRow& b) { return a.lifts.front() < b.lifts.front(); });
  for (SizedRow& row : s.rows) {
    const int hangs = row.lifts.front() - (leapfrog == Leapfrog::ahead ? 1 : 0);
    const auto set = std::min_element(free_from.begin(), free_from.end());
    if (set != free_from.end() && *set <= hangs) {
      row.set = static_cast<std::size_t>(set - free_from.begin());
    } else {
      row.set = free_from.size();
      free_from.push_back(0);
    }
    free_from[row.set] = row.lifts.back() + 1;
  }
  s.sets = free_from.size();
}

auto worth(const Sizing& s) {
  return std::tuple{s.sets, s.rows.size(), s.lifts.size()};
}

}  // namespace

Result<Sizing> size_rows(const SizingCase& c, Leapfrog leapfrog) {
  if (auto fault = fault_of(c)) return Failed(*std::move(fault));
  const auto motors = motors_along(c);
  if (!motors) return Failed(motors.error());

  const Length reach = c.motor.reach_z * 2.0;
  const double more = (c.height - reach) / (reach - c.knit_depth);
  const int fewest_rows = 1 + std::max(0, static_cast<int>(std::ceil(more - 1e-9)));
  const int fewest_lifts = static_cast<int>(std::ceil(c.height / c.deepest_lift - 1e-9));
  const int most_lifts =
      std::max(fewest_lifts, static_cast<int>(std::floor(c.height / kThinnestLift + 1e-9)));
  std::optional<Sizing> best;
  std::optional<Pressure> least_head;
  for (int rows = fewest_rows; rows <= fewest_rows + kMoreRows; ++rows) {
    for (int lifts = fewest_lifts; lifts <= most_lifts; ++lifts) {
      Sizing s;
      s.lifts = even_lifts(c.height, lifts);
      s.rows = even_rows(c, rows);
      if (!serve(c, s)) continue;
      if (!least_head || s.head < *least_head) least_head = s.head;
      if (c.rating && s.head > *c.rating * (1 - kHeadKept)) continue;
      share_sets(s, leapfrog);
      if (!best || worth(s) < worth(*best)) best = std::move(s);
    }
  }
  if (!best) {
    return fail(Error::Kind::refused, inside(said("sizing"), said("head on a running row")),
                {said("no layout keeps it under {share~} of the form's {rating}; the least is "
                      "{least} with lifts of {lift}"),
                 {{"share", share(1 - kHeadKept)},
                  {"rating", amount(*c.rating)},
                  {"least", amount(*least_head)},
                  {"lift", amount(metres(in_metres(c.height) / most_lifts))}}},
                said("Take motors that reach less far up, a stronger form, or internal vibration"));
  }
  best->spacing = c.length / static_cast<double>(*motors);
  best->force_share = force_share(c, *motors);
  for (std::size_t i = 0; i < *motors; ++i) {
    best->motors.push_back(best->spacing * (static_cast<double>(i) + 0.5));
  }
  return *std::move(best);
}

}  // namespace rb::trade
