// Time of setting from penetration readings on the mortar, after ASTM C403.
// Thresholds 3.5 MPa (500 psi) initial, 27.6 MPa (4000 psi) final: ASTM C403, not seen, second
// hand. Fit: ln(resistance) = a + b ln(time) by least squares, as C403 allows (from memory; so
// is its wish for six readings and a correlation of 0.98). The uncertainty is the usual one of
// inverse prediction from a straight line (delta method), Student's t with n - 2 degrees of
// freedom.
#pragma once

#include <vector>

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

inline constexpr Pressure kInitialSet = kilopascals(3500.0);
inline constexpr Pressure kFinalSet = kilopascals(27600.0);

struct PenetrationReading {
  Seconds at;           ///< since water met cement; over 0 to 100 h
  Pressure resistance;  ///< over 0 to 100 MPa
};

struct PenetrationFit {
  double intercept = 0.0;           ///< a, with time in hours and resistance in MPa
  double slope = 0.0;               ///< b
  double residual_deviation = 0.0;  ///< of ln(resistance), n - 2 degrees of freedom
  double correlation = 0.0;         ///< of ln(resistance) with ln(time)
  int readings = 0;
  double mean_ln_hours = 0.0;
  double mean_ln_mpa = 0.0;
  double spread_ln_hours = 0.0;  ///< sum of squares about the mean
  Seconds first, last;           ///< span of the readings
};

struct SetTime {
  Seconds at;
  Seconds standard_error;        ///< of the fitted line's time at the threshold
  Seconds early, late;           ///< 95 % interval of that time
  bool beyond_readings = false;  ///< the threshold lies outside the readings: extrapolated
};

/// Input error naming the reading for a number that makes no sense; refused with fewer than three
/// readings or where time or resistance does not grow from each reading to the next.
Result<PenetrationFit> fit_penetration(const std::vector<PenetrationReading>& readings);

/// The time at which a fit reaches a threshold. Input error for a threshold not over 0 to 100 MPa.
Result<SetTime> set_time(const PenetrationFit& fit, Pressure threshold = kInitialSet);

}  // namespace rb::trade
