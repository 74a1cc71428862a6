// Concrete that came beside what stood there before it: a bay beside a bay, an element beside one
// the plan names as meeting it. Inside this room.
#pragma once

#include <optional>
#include <vector>

#include "check/look.h"

namespace rb {

struct Beside {
  Seconds came{};   ///< the bay's concrete
  Seconds stood{};  ///< since when the concrete beside it had been there
};

/// A lift's concrete in a bay against the bay beside it, at the middle of what it gained there;
/// none: it came first, or there is nothing to meet.
std::optional<Beside> came_beside(const Look& look, const LiftReport& report, std::size_t bay,
                                  std::size_t beside);

/// The plan tells no bays of what meets: of all the bays, and of all heights both have, the one
/// that went worst.
struct Met {
  std::size_t element = 0;  ///< that stood before
  std::size_t bay = 0;      ///< of the lift that came
  Seconds came{}, stood{};
  Seconds set{};  ///< when what stood there sets, the early side
};
/// A lift's concrete against the elements that meet its own, element by element: by how long past
/// its set each was met, and by how long after it stood.
struct MetWorst {
  Met by_set, by_age;
};
std::vector<MetWorst> came_upon(const Look& look, const LiftReport& report);

/// A side of a bay that concrete is still to come against: of the bay beside it in the lift that is
/// placed bay by bay, or of an element that meets its own and does not stand there yet.
struct OpenSide {
  int lift = 0;
  std::size_t bay = 0;
  std::optional<std::size_t> beside{};  ///< the bay that has not come
  std::optional<std::size_t> other{};   ///< the element that has not
  EventRef ref = 0;                     ///< of the lift
  Seconds came{}, sets{};               ///< of the concrete that sets first, the early side
};
/// Of an element; none in a closed pour, nor where somebody decided on the joint.
std::vector<OpenSide> open_sides(const Look& look, std::size_t element);

}  // namespace rb
