// The story of one spot of a face, as the screens tell it: which load it came from, when it came,
// what worked it, what pressed on it, when it set, when it was covered, and what was seen there.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "pour/log/state.h"

namespace rb::screens {

/// What a face is looked at for.
enum class FaceKind { dose, cover, head, load };

/// A place on a face, seen from the near side: x from the left end, z from the base.
struct Spot {
  Length x{}, z{};
  bool operator==(const Spot&) const = default;
};

/// A load the concrete of a spot may have come from.
struct SpotLoad {
  TicketId ticket{};
  std::optional<Seconds> age{};  ///< when it came; none: its truck was not entered
  std::optional<Length> slump{};
  std::optional<Celsius> temp{};
};

/// A stretch in which it was vibrated and nothing changed.
struct SpotShaken {
  Moment from{}, to{};
  double counts = 1;             ///< what a second counted for
  std::vector<RowPlace> rows{};  ///< that reached it then
  [[nodiscard]] Seconds span() const { return between(from, to); }
};

/// An insertion of internal vibrators that worked it, or came too late or too wide to.
struct SpotInserted {
  Moment at{};
  Seconds each{};
  bool counts = false;  ///< insertions.h says that it worked the spot
};

/// A blemish whose box holds the spot, with its number in the record.
struct SpotBlemish {
  int number = 0;
  EventRef ref = 0;
  std::string kind{};
};

struct SpotView {
  ElementId element{};
  Side side = Side::near_side;
  Spot at{};
  std::size_t bay = 0;            ///< index
  bool opening = false;           ///< no concrete belongs there
  std::optional<Moment> came{};   ///< none: no concrete has come
  std::optional<int> lift{};      ///< that brought it
  bool start_missing = false;     ///< nobody said when the bay was begun: it may have come later
  std::vector<SpotLoad> loads{};  ///< empty: not known
  bool judged = false;            ///< the side has rows: the dose is told
  Seconds dose{}, dose_min{}, dose_max{};
  Seconds after{};                       ///< vibrated when it was no longer workable: not counted
  std::vector<SpotShaken> shaken{};      ///< in order of time
  std::vector<SpotInserted> inserted{};  ///< the same
  std::optional<Pressure> head{};        ///< the greatest that pressed there while a row ran
  std::optional<Moment> head_at{};
  std::optional<Pressure> rating{};
  bool head_over = false;
  std::optional<Moment> workable{};  ///< until when; `sets` where workability does not end before
  std::optional<Moment> sets{};      ///< initial set, the early side
  std::optional<Moment>
      covered{};  ///< when the next lift's concrete began to lie on the lift's top
  std::optional<Seconds> cover_age{};  ///< of the lift's top then
  bool covered_late = false;           ///< that top had set by then
  std::vector<SpotBlemish> blemishes{};
};

/// By all that was logged. `element` is an index into the plan; a spot off the face is moved onto
/// its edge.
SpotView make_spot_view(const PourState& state, std::size_t element, Side side, Spot spot);

}  // namespace rb::screens
