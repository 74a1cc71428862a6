// What the rules about curing, stripping and specimens share, and what of it is not judged. Inside
// this room.
#pragma once

#include <vector>

#include "check/look.h"

namespace rb {

/// When curing of an element was begun, of its last concrete: the first that went on then or began
/// after. None: it was not.
std::optional<Seconds> curing_begun(const PourState& state, std::size_t element, Seconds came);

/// All its concrete is in: always in a finished look, and once the pour is closed or its last
/// planned lift has ended.
bool all_in(const Look& look, std::size_t element);

/// Curing planned and not yet seen through, a strip strength nothing can show, specimens not broken
/// yet, a slab whose weather nobody read.
void tell_after_pour(const Look& look, std::vector<NotJudged>& gaps);

}  // namespace rb
