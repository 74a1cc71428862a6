// A row of motors as the Pour screen shows it.
#pragma once

#include "screens/view/pour_view.h"

namespace rb::screens {

/// The rows of an element from the top down, near before far.
std::vector<RowView> make_row_views(const PourState& state, std::size_t element, Moment now);

}  // namespace rb::screens
