#include "screens/seen/damage_seen.h"

namespace rb::screens {

std::string damage_words(const Say& say, const DamageSeen& damage) {
  if (damage.events == 0) return {};
  return damage.events == 1 ? say(Word::damaged_one, damage.ids)
                            : say(Word::damaged_many, damage.events, damage.ids);
}

}  // namespace rb::screens
