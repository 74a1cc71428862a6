// How often a spot is vibrated in a layout. Inside this room.
#pragma once

#include "trade/motors/sizing.h"

namespace rb {

/// The most runs any spot of one side gets once its concrete is there; 1 at the least.
double most_runs(const trade::Sizing& sized);

}  // namespace rb
