#include "pour/plan/verdicts.h"

#include "base/limits.h"

namespace rb {

HeadVerdict judge_head(const Element& element, Pressure head) {
  if (!element.form_rating) return HeadVerdict::unrated;
  return over(head, *element.form_rating) ? HeadVerdict::over : HeadVerdict::borne;
}

RiseVerdict judge_rise(const std::optional<Velocity>& rise, const std::optional<Velocity>& limit) {
  if (limit && *limit <= Velocity{}) return RiseVerdict::no_rate;
  constexpr double kNear = 0.9;
  if (!rise || !limit) return RiseVerdict::unjudged;
  if (over(*rise, *limit)) return RiseVerdict::fast;
  return over(*rise, *limit * kNear) ? RiseVerdict::near : RiseVerdict::within;
}

BandVerdict judge_band(Seconds ran, const Limits& limits) {
  if (ran <= Seconds{}) return BandVerdict::none;
  if (under(ran, limits.dose_min.value)) return BandVerdict::short_of;
  return over(ran, limits.dose_max.value) ? BandVerdict::past : BandVerdict::within;
}

bool ran_enough(Seconds ran, const Limits& limits) {
  const BandVerdict band = judge_band(ran, limits);
  return band == BandVerdict::within || band == BandVerdict::past;
}

SpeedVerdict judge_speed(Frequency speed, const std::optional<MotorType>& type) {
  if (type && over(speed, type->top_speed)) return SpeedVerdict::fast;
  return under(speed, kSlowestSpeed) ? SpeedVerdict::slow : SpeedVerdict::within;
}

}  // namespace rb
