// The colours of the record's drawings as an ICC profile, so that they mean the same everywhere.
// Inside this room.
#pragma once

#include <string>

#include "base/moment.h"

namespace rb {

/// sRGB (IEC 61966-2-1; not seen, second hand: primaries, white and curve are Little CMS's), as a
/// display profile of ICC version 2, dated by `made`; the same bytes for the same date. Empty where
/// there was no memory for it.
std::string srgb_profile(Moment made);

}  // namespace rb
