#include "pour/planner/laid_out.h"

#include <algorithm>
#include <cmath>

namespace rb {

MotorId planned_motor(const trade::Sizing& sized, std::size_t side, std::size_t set,
                      std::size_t place) {
  const std::size_t number = (side * sized.sets + set) * sized.motors.size() + place + 1;
  return MotorId{"M" + std::to_string(number)};
}

Element laid_out(const PlanWish& wish, const trade::Sizing& sized) {
  Element e;
  e.id = wish.element;
  e.kind = wish.kind;
  e.length = wish.length;
  e.height = wish.height;
  e.thickness = wish.thickness;
  e.section = wish.section;
  e.thickness_top = wish.thickness_top;
  e.form_rating = wish.form_rating;
  e.form_mass = wish.form_mass;
  e.rise_limit = wish.rise_limit;
  e.reach_pressure = wish.reach_pressure;
  const bool round = wish.section == trade::Section::round;
  const auto bays =
      static_cast<std::size_t>(round ? 1.0 : std::max(1.0, std::round(wish.length / wish.bay)));
  e.bays.assign(bays, wish.length / static_cast<double>(bays));
  if (!wish.bays.empty()) e.bays = wish.bays;
  e.openings = wish.openings;
  e.beams = wish.beams;
  e.batter_deg = wish.batter_deg;
  e.lifts = sized.lifts;
  for (std::size_t side = 0; side < (wish.both_sides ? 2U : 1U); ++side) {
    for (std::size_t r = 0; r < sized.rows.size(); ++r) {
      const trade::SizedRow& row_sized = sized.rows[r];
      Row row{RowId{"R" + std::to_string(r + 1)},
              side == 0 ? Side::near_side : Side::far_side,
              row_sized.z,
              {},
              row_sized.lifts};
      for (std::size_t i = 0; i < sized.motors.size(); ++i) {
        row.motors.push_back({planned_motor(sized, side, row_sized.set, i), sized.motors[i],
                              wish.reach_x, wish.reach_z});
      }
      e.rows.push_back(std::move(row));
    }
  }
  return e;
}

}  // namespace rb
