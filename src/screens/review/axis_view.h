// One time axis of a pour: what happened on an element, and to the pour around it, lane by lane.
// Made once; drawn at every frame.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "check/check.h"
#include "pour/log/state.h"

namespace rb::screens {

struct AxisSpan {
  Seconds from{}, to{};
  std::uint8_t line = 0;  ///< which of the lane's lines: a row, a severity
};
struct AxisLift {
  int lift = 0;
  Seconds from{}, to{};
};

/// On the pour's clock, from its first event to its close, or to the last moment told of.
struct AxisView {
  Seconds begin{}, end{};
  Length height{};                                       ///< of the form
  std::vector<std::vector<trade::SurfacePoint>> tops{};  ///< bay by bay
  std::vector<AxisLift> lifts{};
  std::uint8_t rows = 0;                             ///< of the element
  std::vector<AxisSpan> runs{};                      ///< `line` a row
  std::vector<AxisSpan> moves{}, trucks{}, tests{};  ///< moves of motors: moments
  std::vector<AxisSpan> holds{};                     ///< 0 a hold, 1 gone on over a gate
  std::vector<AxisSpan> findings{};                  ///< `line` the severity: 0 stop
  std::vector<Seconds> events{};                     ///< every tap, in order of time
};
AxisView make_axis_view(const PourState& state, const CheckReport& report, std::size_t element);

/// What went on at a moment.
struct MomentSeen {
  std::optional<int> lift{};        ///< being placed
  std::vector<RowPlace> running{};  ///< rows of the element
  std::optional<EventRef> last{};   ///< the tap before it
  bool held = false;
};
MomentSeen make_moment_seen(const PourState& state, std::size_t element, Seconds at);

}  // namespace rb::screens
