// How much of a lift got less than the least dose, and where it is worst. Inside this room.
#pragma once

#include "check/rule.h"

namespace rb {

struct Shortfall {
  double under = 0;  ///< share of the lift, bays that nothing vibrated left out
  WorstPlace worst;
};
/// Of LiftReport `i`, by what rows and insertions did; of its face, by what the rows alone did.
/// None: within the limit. Bays that nothing vibrated are told by a rule of their own.
std::optional<Shortfall> shortfall(const Look& look, std::size_t i);
std::optional<Shortfall> face_shortfall(const Look& look, std::size_t i);

/// A finding with its place and figures.
Finding shortfall_finding(const Look& look, const Rule& rule, std::size_t i, const Shortfall& some);

}  // namespace rb
