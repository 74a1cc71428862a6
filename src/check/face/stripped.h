// The faces told as stripped, each with what stood against it: what the rules about stripping
// share. Inside this room.
#pragma once

#include <vector>

#include "check/look.h"
#include "pour/outlook/stripping.h"

namespace rb {

struct Stripped {
  std::size_t element = 0;
  Side side = Side::near_side;
  EventRef ref = 0;
  Seconds at{};
  StripVerdict verdict;
};
/// Of elements that concrete came into, in the order they were entered.
std::vector<Stripped> stripped(const Look& look);

/// Who gave the leave told beside a stripped face; empty: nobody.
std::string leave_by(const Look& look, const StripVerdict& verdict);

}  // namespace rb
