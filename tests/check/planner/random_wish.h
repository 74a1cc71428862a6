// Pours drawn at random, as a planner may be asked for them.
#pragma once

#include <random>

#include "pour/planner/planner.h"

namespace rb {

/// Walls and columns (square, oblong, round, tapered, battered), with openings and bays of their
/// own; hot and cold; few motors and few hands; in whole centimetres or whole inches.
PlanWish random_wish(std::mt19937& draw, Units units);

}  // namespace rb
