// Limits on a load at the form: its age and its temperature.
// Age: 90 min from batching, the limit ASTM C94 long gave (not seen, second hand); its 2021
// edition leaves it to the purchaser or the producer (second hand), so it is a setting with that
// default. Hottest: 35 degC (95 degF), ACI 301-20 and 305.1-14 (not seen, second hand). Coldest by
// the least dimension of the section, ACI 306: under 12 in 55 degF, 12 to 36 in 50 degF, 36 to 72
// in 45 degF, over 72 in 40 degF (second hand); it is the concrete's temperature, not the air's.
// Exactly 72 in lies in no row of the table as told and counts here as 36 to 72 in, the stricter.
#pragma once

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

inline constexpr Seconds kLoadAgeDefault{5400.0};
inline constexpr Celsius kHottestPlacing = celsius(35.0);

/// The coldest concrete may be as placed. Input error for a section outside 0.01 to 100 m.
Result<Celsius> coldest_placing(Length least_dimension);

}  // namespace rb::trade
