// Whether anything at all was done to consolidate a lift's concrete. Inside this room.
#pragma once

#include "check/look.h"
#include "pour/outlook/insertions.h"

namespace rb {

/// Whether an insertion was told for a lift's concrete in a bay.
bool goes_into(const Look& look, const InsertState& insert, const LiftReport& report,
               std::size_t bay);
/// Whether an insertion was logged for a lift's concrete in a bay; of what kind is not asked.
bool inserted(const Look& look, const LiftReport& report, std::size_t bay);

/// The bays of a lift that gained concrete on which no row that reaches it ran and into which
/// nobody inserted, from the lift's start to now; none before the lift is settled.
struct BareBays {
  std::vector<std::size_t> bays;
  bool all = false;  ///< every bay that gained concrete: what follows from it needs no telling
  [[nodiscard]] bool has(std::size_t bay) const;
};
BareBays bare_bays(const Look& look, const LiftReport& report);

}  // namespace rb
