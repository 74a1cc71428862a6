// Which panel of which element a target stands on. "back" and "key 5" are on many panels, and "row
// R1 near" on every element: a press that waited counts only where it was aimed.
#pragma once

#include <cstdint>

#include "base/ids.h"
#include "screens/entry/drafts.h"

namespace rb::screens {

/// Of what stands outside panels: the pour and the element shown.
std::uint64_t scope_of(const PourId& pour, std::size_t element);
/// Of an open panel: its kind and the step or page it is at.
std::uint64_t scope_of(const Drafts& drafts);

}  // namespace rb::screens
