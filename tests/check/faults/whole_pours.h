// The good wall, column and deck with all that is planned before and after them: a trunk, a
// generator and an internal vibrator on the inverter, curing, temperatures in the concrete, leave
// to strip, a stripped face and specimens. What single faults of the whole of a pour are put into.
#pragma once

#include "good_pours.h"

namespace rb::test {

/// Hours after the last concrete came.
struct After {
  double permit = 47.9, strip = 48;
};

Pour whole_wall(const After& after = {});
Pour whole_column(const After& after = {});
/// Round, 0.6 m across.
Pour whole_round_column(const After& after = {});
/// The column and a footing W2 beside it, 0.6 x 0.6 x 0.6 m, that the second truck fills as well.
Pour whole_two_columns();
Pour whole_deck(const After& after = {});

}  // namespace rb::test
