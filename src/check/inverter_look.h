// What runs on each inverter at every moment it changes. Shared by power-over and volts-low. Inside
// this room.
#pragma once

#include "check/rule.h"

namespace rb {

/// The stretch in which most motors run on each inverter that has any; of equal ones the first,
/// in a live look the latest.
std::vector<InverterMoment> busiest(const Look& look);

/// What that many motors of the plan's type draw together; nothing without a type.
Current drawn(const Plan& plan, std::size_t motors);

}  // namespace rb
