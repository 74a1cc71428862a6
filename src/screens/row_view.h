// A row of motors as the Pour screen shows it.
#pragma once

#include "screens/pour_view.h"

namespace rb::screens {

/// The rows of an element from the top down, near before far.
std::vector<RowView> make_row_views(const PourState& state, std::size_t element, Moment now);

/// How long a row has run since a moment on the pour's clock, all its runs together, up to now.
Seconds ran_since(const PourState& state, std::size_t element, std::size_t row, Seconds since,
                  Seconds now);

}  // namespace rb::screens
