// What comes after the last lift, as the screens show it: how each face stands to being stripped,
// and the specimens that were taken.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"
#include "pour/outlook/gates.h"

namespace rb::screens {

/// A face, were it stripped now.
struct StripView {
  Side side = Side::near_side;
  std::optional<StripVerdict> verdict{};  ///< none: no concrete has come
  std::vector<Gate> gates{};              ///< what is not in order for it
};
/// Near, far; of an element the plan does not have, none.
std::vector<StripView> make_strip_views(const PourState& state, std::size_t element, Seconds at);

struct SpecimenView {
  SpecimenId specimen{};
  TicketId ticket{};  ///< of the load it was taken of
  Moment taken{};
  std::optional<double> age_days{};    ///< when it was broken; none: it was not yet
  std::optional<Pressure> strength{};  ///< as told last
};
/// In the order they were taken.
std::vector<SpecimenView> make_specimen_views(const PourState& state);

}  // namespace rb::screens
