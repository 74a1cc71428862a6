// The picture of an element's face: how many seconds of vibration each part got while it held
// plastic concrete. Plain values to be drawn; who reckons the dose does not matter here.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/quantity.h"
#include "pour/log/state.h"
#include "record/model/spot_stories.h"
#include "trade/dose/dose.h"
#include "words/sentence.h"

namespace rb {

/// A rectangle of concrete with its dose at the bottom and at the top edge, linear between.
struct DoseMapPatch {
  Length x, z, w, h;
  Seconds dose_low{}, dose_high{};
};

/// The dose on one side of one element of a plan.
struct SideDose {
  std::size_t element = 0;
  Side side = Side::near_side;
  std::vector<DoseMapPatch> patches;
};

SideDose side_dose(std::size_t element, Side side, const trade::DoseField& field);

struct DoseMapLift {
  int lift = 0;
  std::vector<Length> tops;  ///< bay by bay
};
struct DoseMapRow {
  std::string row;
  Length z;
  std::vector<Length> motors;
};

/// What the stripped face showed, with its number in the record.
struct DoseMapBlemish {
  int number = 0;
  Patch patch;
};

/// All that is drawn, seen from the near side: x from the left end, z from the base.
struct DoseMap {
  std::string element;
  Side side = Side::near_side;
  Length length, height;
  std::vector<Length> bay_edges;  ///< from 0 to the length
  std::vector<DoseMapLift> lifts;
  std::vector<DoseMapRow> rows;
  std::vector<Patch> openings;
  std::vector<DoseMapBlemish> blemishes;
  std::vector<DoseMapPatch> patches;  ///< none: the dose was not reckoned
  Seconds dose_min{90}, dose_max{120};
  SpotStories stories;  ///< empty where nobody asked for them
};

/// The outline from plan and state, the fill from the field.
DoseMap make_dose_map(const PourState& state, const SideDose& field);

/// The classes a dose is shown in, from none to far over; their order is their darkness.
inline constexpr std::size_t kDoseClasses = 6;
/// The least dose of classes 2 to 5: half the minimum, the minimum, the maximum, 4 x the maximum.
/// Class 0 is no dose at all, class 1 any dose below the first of these.
std::array<Seconds, 4> dose_class_edges(const DoseMap& map);
std::size_t dose_class(const DoseMap& map, Seconds dose);
/// "none", "under 45 s", "45 to 90 s" ...
std::array<std::string, kDoseClasses> dose_legend(const DoseMap& map, Language language = {});

/// A rectangle of one class only.
struct DoseBand {
  double x = 0, z = 0, w = 0, h = 0;  ///< metres
  bool operator==(const DoseBand&) const = default;
};
/// The patches cut where the dose passes from one class to the next, neighbours joined.
std::array<std::vector<DoseBand>, kDoseClasses> dose_bands(const DoseMap& map);

/// A picture file of the face with its legend, `width` pixels wide; `under` stands below it, small.
std::string dose_map_png(const DoseMap& map, const Voice& voice, int width = 1600,
                         const std::string& under = {});

}  // namespace rb
