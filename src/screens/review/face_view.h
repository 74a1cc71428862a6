// A face as a map, as it was at a moment: of dose, age at cover, head or load. The more harm the
// darker; a pattern tells too little from too much. Plain values to be drawn.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "check/check.h"
#include "pour/log/state.h"
#include "pour/outlook/face_bands.h"
#include "screens/view/spot_view.h"

namespace rb::screens {

/// Besides its shade: what is short of something, or still open, is slanted; what is over, barred.
enum class FacePattern { plain, slanted, barred };

/// How a part of the map looks: 0 is as wanted, kMostShade the worst.
struct FaceShading {
  std::uint8_t shade = 0;
  FacePattern pattern = FacePattern::plain;
  bool operator==(const FaceShading&) const = default;
};
inline constexpr std::uint8_t kMostShade = 3;

/// A rectangle of one look, metres from the left end and the base.
struct FacePatch {
  double x = 0, z = 0, w = 0, h = 0;
  FaceShading look{};
};

/// What is written on a part of the map, where it has room: a ticket, an age or a head.
struct FaceLabel {
  double x = 0, z = 0, w = 0, h = 0;  ///< the part
  std::variant<std::string, Seconds, Pressure> tells{};
};

struct FaceRow {
  std::string id{};
  Length z, left, right;
  bool running = false;
};

struct FaceMap {
  Side side = Side::near_side;  ///< the far one is seen from behind: its start is on the right
  Length length, height;
  std::vector<Length> bay_edges{};  ///< from 0 to the length
  std::vector<Length> tops{};       ///< bay by bay, at the moment
  std::vector<Length> lifts{};      ///< heights of joints between lifts by then, the highest bay's
  std::vector<Patch> openings{};
  std::vector<FacePatch> patches{};
  std::vector<FaceLabel> labels{};
  std::vector<FaceRow> rows{};  ///< of the side
};

/// One look of a map and what it stands for: between two figures; none = open on that side. Shares
/// are of what is allowed.
struct FaceKey {
  FaceShading look{};
  std::optional<double> from{}, to{};  ///< seconds for dose, else a share
  enum class Says { between, none, unknown, open } says = Says::between;
};
std::vector<FaceKey> face_keys(FaceKind kind, const PourState& state, std::size_t element);

/// A part of a dose map, by its class (record/model/dose_map.h).
FaceShading look_of_dose(std::size_t dose_class);
/// How much of what is allowed is used up: of the time to set, of the form's rating, of a load's
/// age.
FaceShading look_of_share(double share);

/// A numbered mark on the face: a cause of findings, or a blemish.
struct FaceMark {
  int number = 0;  ///< of the cause in the report, or of the blemish in the record
  bool blemish = false;
  std::optional<Patch> box{};  ///< none: it has no place on this face
  std::size_t finding = 0;     ///< into the report: the first of the cause
  std::size_t count = 1;       ///< findings of the cause
  EventRef ref = 0;            ///< of the blemish
};

/// Where a finding is on its element; none: it names no part of it. `loads`: load_bands() of it.
std::optional<Patch> place_of(const PourState& state, const Finding& finding,
                              const std::vector<LoadBand>& loads);

/// Of an element, and of no element: causes in the report's order, then blemishes of the side.
std::vector<FaceMark> make_face_marks(const PourState& state, const CheckReport& report,
                                      std::size_t element, Side side,
                                      const std::vector<LoadBand>& loads);

}  // namespace rb::screens
