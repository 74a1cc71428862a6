// The screens of the showcase, in parts. Inside this room.
#pragma once

#include <span>

#include "screens/book/showcase.h"

namespace rb::screens {

/// Nothing but this panel open.
Drafts with(Dialog dialog);

std::span<const ShowcaseScreen> showcase_of_no_pour();
std::span<const ShowcaseScreen> showcase_of_afterwards();

}  // namespace rb::screens
