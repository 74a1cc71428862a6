// A stripped face as the screens show it: its concrete, what is blemished and what became of it,
// and how it stands to the log. No words and no pixels.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "check/face/face_score.h"
#include "pour/log/state.h"
#include "screens/view/lazy_list.h"
#include "screens/view/truck_view.h"

namespace rb::screens {

struct RepairView {
  EventId id{};
  event::Repair what{};
  std::string by{};  ///< who told it
  Moment at{};
};
/// A repair, or a blemish left as it was, looked at again.
struct LookedView {
  bool ok = false;
  std::string note{}, by{};
  Moment at{};
};
/// How a blemish stands: by what was told of it last.
enum class Mended { open, repaired, accepted, refused };

/// What the log tells of one spot.
struct SpotTold {
  std::optional<int> lift{};
  std::optional<Moment> came{}, sets{};
  bool judged = false;  ///< the side has rows: the dose is told
  Seconds dose{}, dose_min{};
  std::vector<std::string> rules{};  ///< of the findings that speak of it, each once
};

struct BlemishView {
  ToldTap told{};
  event::Blemish what{};
  int number = 0;  ///< as the record numbers it
  std::string by{};
  std::vector<RepairView> repairs{};
  std::vector<LookedView> looks{};
  std::size_t photos = 0;
  Mended mended = Mended::open;
  LazyList<SpotTold> spot{};  ///< one: of its middle
  /// What a repair or a look is told of: the repair told last, else itself.
  [[nodiscard]] const EventId& looked_at() const {
    return repairs.empty() ? told.id : repairs.back().id;
  }
};

struct BayFace {
  Length x0{}, x1{};
  Length top{};  ///< of its concrete
};

/// One side of an element; x from the left end as seen from the near side.
struct FaceView {
  Side side = Side::near_side;
  Length length{}, height{};
  std::vector<BayFace> bays{};
  std::vector<Patch> openings{};
  std::vector<Length> lifts{};        ///< planned tops
  std::optional<Moment> stripped{};   ///< told last
  std::optional<Moment> inspected{};  ///< the same
  std::string inspected_by{};
  std::vector<BlemishView> blemishes{};
  FaceScore score{};
};
/// Near, far; of an element the plan does not have, none. State and report are looked at as long as
/// the views are.
std::vector<FaceView> make_face_views(const PourState& state, const CheckReport& report,
                                      std::size_t element);

/// A person by name, else by id.
std::string person_name(const Plan& plan, const PersonId& person);

/// A drawn rectangle brought onto the concrete: no smaller than `least` each way, no farther than
/// the face goes.
Patch onto_face(const FaceView& face, Patch drawn, Length least);
/// The blemish whose box holds a spot, the smallest of several; null: none.
const BlemishView* blemish_at(const FaceView& face, Length x, Length z);

}  // namespace rb::screens
