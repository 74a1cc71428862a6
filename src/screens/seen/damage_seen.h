// What the screens say of events a book kept and no longer has whole.
#pragma once

#include <cstddef>
#include <string>

#include "screens/words/say.h"

namespace rb::screens {

struct DamageSeen {
  std::size_t events = 0;
  std::string ids{};  ///< "N1-5, N1-7 to N1-9"
  bool operator==(const DamageSeen&) const = default;
};

/// "2 events damaged: N1-5, N1-7"; empty where none is.
std::string damage_words(const Say& say, const DamageSeen& damage);

}  // namespace rb::screens
