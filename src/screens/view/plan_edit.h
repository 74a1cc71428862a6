// What a finger is in the middle of while a plan is made: the plan so far, and where in it we are.
#pragma once

#include <optional>
#include <string>

#include "pour/planner/plan_draft.h"

namespace rb::screens {

/// Every figure of a plan that is typed on the pad.
enum class PlanField {
  length,
  height,
  thickness,
  thickness_top,
  form_rating,
  rise_limit,
  joint_age,
  strip_after,
  bay_count,
  bay,
  lift_count,
  lift,
  row,
  row_lowest,
  row_apart,
  row_motors,
  reach_x,
  reach_z,
  reach_pressure,
  unit_weight,
  slump,
  initial_set,
  set_temp,
  set_q,
  temp_low,
  temp_high,
  dose_min,
  dose_max,
  under_share,
  rise_window,
  load_age,
  temp_min,
  temp_max,
  volume_tolerance,
  insert_factor,
  knit_depth,
  knit_margin,
  plastic_share,
  insert_least,
  insert_most,
  insert_layer,
  // What the planner is asked beyond the plan:
  motor_force,
  motor_amps,
  motor_speed,
  concrete_temp,
  rise_wished,
  motors_at_hand,
  crew,
  hang_time,
  load,
  trucks_per_hour,
  haul,
  form_mass,
  inverter_volts,
  inverter_amps,
  cord_section,
  cord_length
};

/// One figure: of which element (or mix), and which bay, lift or row of it.
struct FieldRef {
  PlanField field = PlanField::length;
  std::size_t of = 0;
  std::size_t item = 0;
};

struct PlanEdit {
  enum class Page { pour, element, bays, lifts, rows, mix, person, limits, compute };
  enum class Name { none, pour, site, element, mix, person };
  PlanDraft draft{};
  Page page = Page::pour;
  std::size_t of = 0;               ///< the element, mix or person shown
  int turn = 0;                     ///< which part of a long page
  std::optional<FieldRef> field{};  ///< a figure on the pad
  std::string typed{};
  Name naming = Name::none;  ///< a text on the keys
  std::string text{};
  bool removing = false;                          ///< REMOVE was tapped once
  std::optional<Result<PlannedPour>> computed{};  ///< what the planner answered last, on its page
};

}  // namespace rb::screens
