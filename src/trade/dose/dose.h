// The dose of vibration over a face: for every spot, the seconds in which at least one motor that
// reaches it ran, from the moment concrete came there until it set; a second of a motor that turns
// slowly counts for less (force.h), of several motors the one that counts most. Not a simulation:
// along x the face is cut into cells judged at their middle; up the face the dose is exact,
// piecewise linear.
#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "trade/shape/interval.h"
#include "trade/shape/patch.h"
#include "trade/shape/surface.h"

namespace rb::trade {

/// A motor at its place on the form. Works over |x - its x| <= reach_x and |z - its z| <= reach_z,
/// edges included.
struct Shaker {
  Length x, z, reach_x, reach_z;
  Running running;
  [[nodiscard]] bool reaches_x(Length spot) const;
  [[nodiscard]] bool reaches_z(Length spot) const;
  bool operator==(const Shaker&) const = default;
};

/// Concrete that comes from this moment on sets this long after it came; or, when it comes out of
/// one load, all of it at one moment.
struct SetStep {
  Seconds from{};
  Seconds to_set{};
  std::optional<Seconds> at{};  ///< instead of to_set
  /// When concrete that came at a moment of the step sets; not before it comes.
  [[nodiscard]] Seconds sets(Seconds came) const {
    return at ? std::max(*at, came) : came + to_set;
  }
  bool operator==(const SetStep&) const = default;
};

/// The step that holds for concrete that came then. Steps in order of time, at least one; the first
/// holds before it too.
const SetStep& step_at(const std::vector<SetStep>& steps, Seconds came);
/// When the concrete that came at a moment sets.
Seconds sets_at(const std::vector<SetStep>& steps, Seconds came);

struct Face {
  std::vector<Length> bays;                ///< lengths from left to right
  std::vector<TopCurve> tops;              ///< one a bay
  std::vector<Patch> openings;             ///< hold no concrete
  std::vector<std::vector<Shaker>> sides;  ///< the sides that are judged
  bool worst_side_counts = false;  ///< of several sides: thick sections the worst, thin the best
  std::vector<SetStep> sets;       ///< in order of time, never empty; the first holds before it too

  [[nodiscard]] Length length() const;
  [[nodiscard]] std::size_t bay_at(Length x) const;
  [[nodiscard]] Seconds sets_at(Seconds came) const;  ///< when concrete that came then sets
  bool operator==(const Face&) const = default;
};

/// The dose from just above z0 to just below z1, linear between.
struct DosePiece {
  Length z0, z1;
  Seconds d0{}, d1{};
  bool operator==(const DosePiece&) const = default;
};

/// Pieces one above the other, upwards; gaps are openings. Strips alike share them.
class DosePieces {
 public:
  DosePieces() = default;
  explicit DosePieces(std::vector<DosePiece> pieces)
      : pieces_(std::make_shared<const std::vector<DosePiece>>(std::move(pieces))) {}
  [[nodiscard]] auto begin() const { return all().begin(); }
  [[nodiscard]] auto end() const { return all().end(); }
  [[nodiscard]] std::size_t size() const { return all().size(); }
  [[nodiscard]] bool empty() const { return all().empty(); }
  const DosePiece& operator[](std::size_t i) const { return all()[i]; }

 private:
  [[nodiscard]] const std::vector<DosePiece>& all() const {
    static const std::vector<DosePiece> none;
    return pieces_ ? *pieces_ : none;
  }
  std::shared_ptr<const std::vector<DosePiece>> pieces_;
};

/// Cells side by side that have the same dose at every height.
struct DoseStrip {
  Length x0, x1;
  std::size_t bay = 0;
  DosePieces pieces;
};

struct DoseField {
  std::vector<DoseStrip> strips;  ///< from left to right
};

inline constexpr Length kDoseCell = millimetres(50);

/// One bay's part of a lift.
struct Band {
  Length from, to;
  bool operator==(const Band&) const = default;
};

/// The field up to the concrete's top. A spot that concrete has not reached has no piece.
DoseField dose_field(const Face& face, Length cell = kDoseCell);
/// The field inside bands given bay by bay, up to the concrete's top.
DoseField dose_field(const Face& face, const std::vector<Band>& bands, Length cell = kDoseCell);

/// Of a face, all that the field inside the bands depends on: what else happens to the face leaves
/// it equal. Its field in the bands is the face's.
Face part_for(const Face& face, const std::vector<Band>& bands);

struct DoseShares {
  Area area;                     ///< of concrete in the bands
  Area under;                    ///< of that, with less than the least dose
  std::optional<Seconds> least;  ///< none when there is no area
  std::optional<Seconds> mean;
  [[nodiscard]] std::optional<double> under_share() const;
};

/// Shares over bands given bay by bay.
DoseShares dose_shares(const DoseField& field, const std::vector<Band>& bands, Seconds dose_min);

/// The part of a field inside a rectangle.
DoseField inside(const DoseField& field, const Patch& patch);

/// More than any least dose asks.
inline constexpr Seconds kFullDose{1e9};
/// A field with the full dose inside bands, several a bay, where something else than its motors
/// consolidated the concrete.
DoseField filled(const DoseField& field, const std::vector<std::vector<Band>>& bands);

/// A connected part of a face with less than the least dose: the box around it.
struct WeakPatch {
  Patch box;
  Area area;
  Seconds least{};
};

/// The largest connected under-dosed part of the bands, if there is any.
std::optional<WeakPatch> worst_patch(const DoseField& field, const std::vector<Band>& bands,
                                     Seconds dose_min);

/// One spot's story on one side.
struct SpotStory {
  Seconds came{};
  Seconds sets{};
  Seconds dose{};
  struct Shaken {
    Interval when;  ///< clipped to [came, sets]; its work that of the motor that counts most
    std::vector<std::size_t> shakers;  ///< indices into the side
  };
  std::vector<Shaken> shaken;
};

/// Nothing when concrete has not reached the spot, or the spot is in an opening.
std::optional<SpotStory> spot_story(const Face& face, std::size_t side, Length x, Length z);

}  // namespace rb::trade
