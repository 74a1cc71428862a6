// How long to wait before form vibrators run again under a head that the form does not bear.
// A vibrator makes liquid again what it reaches while that is plastic; concrete past its initial
// set is taken to carry itself and no longer counts (common practice, no source). Nothing short of
// the initial set counts as a gain, however stiff it looks. The figure advises: the form's designer
// decides whether a row may run, and no wait makes it safe.
#pragma once

#include <optional>
#include <span>

#include "trade/dose/dose.h"
#include "trade/shape/surface.h"

namespace rb::trade {

/// What a row works on, and what the form there bears.
struct HeadLimit {
  UnitWeight unit_weight;
  Pressure rating;
  Length low, high;  ///< of the row's reach; below the base counts as the base
};

/// The time from `at` until all concrete from the row's lower reach up to where the head falls to
/// the rating has set, so that the head over plastic concrete alone is no more than the rating; the
/// lowest plastic spot counts even if what lies over it has set. Zero: it is no more already.
/// Nothing: it never gets there, because by then nothing plastic would be left in the row's reach.
/// Reckoned for the top as it stands at `at`: concrete placed meanwhile makes it longer. `sets`: as
/// Face::sets; give the late side of a set time that is not sure.
std::optional<Seconds> wait_before_running(const TopCurve& top, std::span<const SetStep> sets,
                                           const HeadLimit& limit, Seconds at);

}  // namespace rb::trade
