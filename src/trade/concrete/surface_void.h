// Surface voids (bug holes) on a stripped face, as a share of the area looked at.
// Classes SVR1 1.2 %, SVR2 0.9 %, SVR3 0.6 %, SVR4 0.3 % of ACI 347.3R-13, voids of 2 to 15 mm
// counted, classes CSC1 to CSC4 of a face asking for SVR1 to SVR4: from memory. Test area 24 x 24
// in: read in the abstract of a paper on it. The same paper found that two areas 12 in apart can
// fall in the best and the worst class: show the figure, and no verdict from one area.
#pragma once

#include <optional>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

enum class VoidClass { svr1, svr2, svr3, svr4 };

inline constexpr Length kVoidTestSide = inches(24.0);
inline constexpr Length kSmallestVoid = millimetres(2.0);
inline constexpr Length kLargestVoid = millimetres(15.0);

/// The largest share of voids a class allows.
double greatest_void_share(VoidClass voids);

/// Share of voids in an area looked at: 0 to 1. Input error for an area outside 0.0001 to 10000 m2,
/// or voids below 0 or larger than the area.
Result<double> void_share(Area voids, Area looked_at);

/// The best class a share meets (SVR4 is the best). Nothing if it meets none. Input error for a
/// share outside 0 to 1.
Result<std::optional<VoidClass>> void_class(double share);

}  // namespace rb::trade
