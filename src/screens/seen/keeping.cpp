#include "screens/seen/keeping.h"

namespace rb::screens {

bool stuck(const Keeping& keeping, Moment now) {
  switch (keeping.state) {
    case Keeping::State::kept:
    case Keeping::State::read_only:
      return false;
    case Keeping::State::keeping:
      return keeping.since && between(*keeping.since, now) >= kSlowDisk;
    case Keeping::State::waiting:
    case Keeping::State::moved_away:
      return true;
  }
  return false;
}

std::string keeping_short(const Say& say, const Keeping& keeping, Moment now) {
  if (keeping.state == Keeping::State::read_only) return say(Word::keep_reading);
  if (keeping.state == Keeping::State::moved_away && keeping.waiting == 0) {
    return say(Word::keep_away);
  }
  if (stuck(keeping, now)) {
    return say(keeping.waiting == 1 ? Word::keep_waits_one : Word::keep_waits, keeping.waiting);
  }
  return say(keeping.state == Keeping::State::kept ? Word::kept : Word::keep_keeping);
}

std::string keeping_told(const Say& say, const Keeping& keeping, Moment now) {
  if (keeping.state == Keeping::State::read_only) return say(Word::keep_read_only);
  std::string told;
  if (keeping.state == Keeping::State::moved_away) told = say(Word::keep_moved);
  if (stuck(keeping, now) && keeping.waiting > 0) {
    if (!told.empty()) told += " ";
    const std::string since = keeping.since ? say.clock_short(*keeping.since) : std::string{"?"};
    told += keeping.waiting == 1 ? say(Word::keep_wait_one, since)
                                 : say(Word::keep_wait, keeping.waiting, since);
  }
  return told;
}

}  // namespace rb::screens
