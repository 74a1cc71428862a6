#include "app/clock_asker.h"

#include "app/made.h"

namespace rb {

Moment program_made() {
  static const Moment made = parse_moment(made_text()).value_or(Moment{});
  return made;
}

std::optional<screens::ClockQuestion> ClockAsker::question(Moment now) const {
  if (right_on_ && *right_on_ == day_text(now, utc_offset_)) return std::nullopt;
  const auto question = screens::doubt_of_clock(now, made_, last_entry_);
  if (question.doubt == screens::ClockDoubt::none) return std::nullopt;
  return question;
}

}  // namespace rb
