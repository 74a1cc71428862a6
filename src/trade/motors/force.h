// What a form vibrator does: force, acceleration, amplitude, and how much force a form needs.
//   F = m r w^2: mechanics. a = amplitude (2 pi f)^2: mechanics.
//   At a fixed eccentric the force grows with the square of the speed: mechanics.
//   Least useful on the form: 1.5 g and 40 um: common practice, no source.
//   A second at a speed counts as the square of its share of the working speed, whole from there
//   on: the force is mechanics; that the effect goes with the force is a choice of this project.
//   Motors work at 0.8 of their greatest speed or faster: a choice of this project.
//   Force needed: 0.5 x (weight of form + 0.2 x weight of concrete in reach) for walls and beams of
//   plastic concrete; 1.5 x the same for pipes and stiff mixes: from memory of ACI 309R.
// Sizing is a first guess: the form's own stiffness decides, and its designer must agree to it.
#pragma once

#include "base/quantity.h"
#include "base/result.h"

namespace rb::trade {

inline constexpr Acceleration kNeededAcceleration = metres_per_second2(1.5 * kStandardGravity);
inline constexpr Length kNeededAmplitude = millimetres(0.040);

/// Force of an eccentric of a mass at a radius, turning at a speed. Input error outside 0 to 100
/// kg, 0 to 1 m, 0 to 500 Hz.
Result<Force> centrifugal_force(Mass eccentric, Length radius, Frequency speed);

/// The force a motor rated at one speed gives at another (same eccentric setting). Input error for
/// a force outside 0 to 500 kN, a rated speed not over 0, or a speed outside 0 to 500 Hz.
Result<Force> force_at_speed(Force rated, Frequency rated_speed, Frequency speed);

/// Of their greatest speed, what motors work at whose plan says no more.
inline constexpr double kWorkingShare = 0.8;

/// What a second of a motor counts for that turns at a speed, of one at its working speed; at most
/// 1. `working` is over 0.
double second_counts(Frequency speed, Frequency working);

/// Peak acceleration of a movement of a given amplitude (half the travel) and frequency.
Result<Acceleration> acceleration(Length amplitude, Frequency frequency);

/// The amplitude that gives a peak acceleration at a frequency. Input error at no frequency.
Result<Length> amplitude(Acceleration peak, Frequency frequency);

enum class FormKind { wall_or_beam, pipe_or_stiff_mix };

/// Force needed to move a form with the concrete it holds within the vibrators' reach. Input error
/// outside 0 to 1000 t of either.
Result<Force> force_needed(Mass form, Mass concrete_in_reach,
                           FormKind kind = FormKind::wall_or_beam);

}  // namespace rb::trade
