// When the places of one row shook (form.h has it for all the rows of an element).
#pragma once

#include "pour/outlook/form.h"

namespace rb {

RowShaking shaking(const PourState& state, std::size_t element, std::size_t row, Seconds until,
                   Unended unended);
/// By the runs that were still on after a moment, and those begun later.
RowShaking shaking_since(const PourState& state, std::size_t element, std::size_t row,
                         Seconds since, Seconds until, Unended unended);

}  // namespace rb
