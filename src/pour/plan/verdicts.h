// How a figure stands to its limit, each decided once: rules find by it, screens show it.
#pragma once

#include <optional>

#include "pour/plan/plan.h"

namespace rb {

/// The head on a row against what the form bears.
enum class HeadVerdict {
  unrated,  ///< the plan gives no rating: held to nothing
  borne,
  over,
};
HeadVerdict judge_head(const Element& element, Pressure head);

/// How fast the concrete rises against what is allowed.
enum class RiseVerdict {
  unjudged,  ///< no rise, or nothing to hold it to
  within,
  near,  ///< over nine tenths of it: an early word, no finding (our own choice)
  fast,
  no_rate,  ///< none keeps the form under its rating: slower would not help
};
RiseVerdict judge_rise(const std::optional<Velocity>& rise, const std::optional<Velocity>& limit);

/// How long a row has run for a lift against the band from dose_min to dose_max.
enum class BandVerdict { none, short_of, within, past };
BandVerdict judge_band(Seconds ran, const Limits& limits);
/// Whether it ran as long as the plan asks.
bool ran_enough(Seconds ran, const Limits& limits);

/// Under which no form vibrator moves the concrete: common practice, no source.
inline constexpr Frequency kSlowestSpeed = vibrations_per_minute(3000);
/// What a motor turns at against what its plan says it bears.
enum class SpeedVerdict { within, slow, fast };
SpeedVerdict judge_speed(Frequency speed, const std::optional<MotorType>& type);

}  // namespace rb
