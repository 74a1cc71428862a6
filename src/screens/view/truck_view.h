// The trucks as the screens show them: who waits, who discharges, and how old the load is.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/happening.h"
#include "pour/log/state.h"

namespace rb::screens {

struct TruckView {
  enum class Stage { discharging, waiting, done };
  enum class AgeWord { unknown, young, nearly, over };  ///< against the plan's limit of age
  TicketId ticket{};
  Stage stage = Stage::waiting;
  bool entered = false;  ///< false: only its discharge was logged
  MixId mix{};
  std::optional<Volume> volume{};
  std::optional<Moment> batched{}, arrived{}, discharged{}, ended{};
  std::optional<ElementId> element{};  ///< that it went into last
  std::vector<ElementId> elements{};   ///< that any of it may have gone into
  bool rest_may_go = false;  ///< it is over, but young enough for its rest to go elsewhere
  Volume left{};             ///< to be discharged yet, where its parts tell
  Seconds age{};             ///< from batching to the end of its discharge, or to now
  Seconds limit{};           ///< of the plan
  AgeWord word = AgeWord::unknown;
  bool tested = false;
  std::optional<Length> slump{};  ///< as tested last
  std::optional<Celsius> temp{};  ///< the same
};

/// A load this near its limit of age is said to be nearly over it (our own choice).
inline constexpr Seconds kNearlyOld{900};

/// Discharging first, then those waiting, the oldest load first, then the rest, the latest first.
std::vector<TruckView> make_truck_views(const PourState& state, Moment now);

/// A tap as a correction of it needs it.
struct ToldTap {
  EventId id{};
  Moment at{};
  Happening what{};
};
/// What of a load went into one element, and the tap that told it.
struct LoadPart {
  std::optional<ElementId> element{};  ///< none: not told
  Moment from{};
  std::optional<Moment> to{};
  std::optional<Volume> volume{};  ///< none: all of the load, or what was left of it
  ToldTap told{};                  ///< its beginning, or the later one that told its volume
};
/// A load, part by part, as the panel shows it that tells where it went.
struct LoadView {
  TicketId ticket{};
  std::optional<ToldTap> entered{};  ///< none: only its discharge was logged
  std::optional<Volume> volume{}, returned{};
  std::vector<LoadPart> parts{};
};
/// In the order the tickets came.
std::vector<LoadView> make_load_views(const PourState& state);

}  // namespace rb::screens
