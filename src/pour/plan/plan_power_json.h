// The power of a plan from and to JSON: inverters, their cords, generators, the motors' type.
// Inside this room.
#pragma once

#include <optional>
#include <vector>

#include "pour/plan/json_fields.h"

namespace rb {

/// The list `power` of a plan; throws BadField.
std::vector<Inverter> read_power(Fields& plan);
/// The object `motor_type` of a plan; none: it is not given.
std::optional<MotorType> read_motor_type(Fields& plan);

Json inverter_json(const Inverter& inverter);
Json motor_type_json(const MotorType& type);

}  // namespace rb
