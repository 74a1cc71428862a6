// What a finger is in the middle of while a plan is made: the plan so far, and where in it we are.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "pour/planner/plan_draft.h"

namespace rb::screens {

/// A figure of a plan that is typed on the pad, by its name (screens/plan/plan_field_table.h).
struct PlanField {
  std::string_view name;
  bool operator==(const PlanField&) const = default;
  // Those a page names in its own place.
  static const PlanField length, height, thickness, form_rating, rise_limit, bay_count, bay,
      lift_count, lift, row, row_lowest, row_apart, row_motors, reach_x, reach_z, reach_pressure,
      unit_weight, slump, initial_set, set_temp, motor_force, motor_amps;
};
inline constexpr PlanField PlanField::length{"length"};
inline constexpr PlanField PlanField::height{"height"};
inline constexpr PlanField PlanField::thickness{"thickness"};
inline constexpr PlanField PlanField::form_rating{"form_rating"};
inline constexpr PlanField PlanField::rise_limit{"rise_limit"};
inline constexpr PlanField PlanField::bay_count{"bay_count"};
inline constexpr PlanField PlanField::bay{"bay"};
inline constexpr PlanField PlanField::lift_count{"lift_count"};
inline constexpr PlanField PlanField::lift{"lift"};
inline constexpr PlanField PlanField::row{"row"};
inline constexpr PlanField PlanField::row_lowest{"row_lowest"};
inline constexpr PlanField PlanField::row_apart{"row_apart"};
inline constexpr PlanField PlanField::row_motors{"row_motors"};
inline constexpr PlanField PlanField::reach_x{"reach_x"};
inline constexpr PlanField PlanField::reach_z{"reach_z"};
inline constexpr PlanField PlanField::reach_pressure{"reach_pressure"};
inline constexpr PlanField PlanField::unit_weight{"unit_weight"};
inline constexpr PlanField PlanField::slump{"slump"};
inline constexpr PlanField PlanField::initial_set{"initial_set"};
inline constexpr PlanField PlanField::set_temp{"set_temp"};
inline constexpr PlanField PlanField::motor_force{"motor_force"};
inline constexpr PlanField PlanField::motor_amps{"motor_amps"};

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
