// The stripped face held against the log: of what is blemished, where the checker had spoken and
// where it had not. It measures the checker and the log, not the concrete. Our own measure.
#pragma once

#include <optional>
#include <vector>

#include "check/check.h"

namespace rb {

/// How far a face was looked at. What nobody inspected is not without blemish.
enum class FaceLook {
  standing,   ///< not told as stripped
  stripped,   ///< and nobody told a blemish yet, nor that it was inspected
  begun,      ///< blemishes are told, and not that all of it was inspected
  inspected,  ///< told as inspected: what is not told was not found
};

/// Areas of concrete on one side of an element: openings, and what no concrete reached, are out.
struct FaceScore {
  FaceLook look = FaceLook::standing;
  Area face;              ///< all of it
  Area spoken;            ///< of it, where a finding speaks of a place
  Area blemished;         ///< of it; where two blemishes overlap it counts once
  Area blemished_spoken;  ///< of that, where a finding speaks
  /// Shares, 0 to 1. None: there is nothing to share out. The second is told beside the first: a
  /// checker that speaks of everything foretells every blemish.
  [[nodiscard]] std::optional<double> foretold() const;      ///< of what is blemished
  [[nodiscard]] std::optional<double> spoken_share() const;  ///< of the face
  bool operator==(const FaceScore&) const = default;
};

/// Of an element of the plan. Blemishes count whether mended since or not. Overlapping outlines
/// drawn by hand count as the sum of both, up to the rectangle they are cut by.
FaceScore score_face(const PourState& state, const CheckReport& report, std::size_t element,
                     Side side);

/// How far it was looked at.
FaceLook look_of_face(const PourState& state, std::size_t element, Side side);

/// The part of a face that a finding speaks of: of a lift, a bay or a row, where all it names meet.
/// A joint's reaches 0.15 m below it (our own choice), a row's goes through a thin section. Empty:
/// it speaks of no place there, of paper alone, or of people's safety, not of the concrete.
std::vector<trade::Patch> spoken_of(const PourState& state, const Finding& finding,
                                    std::size_t element, Side side);

/// The findings that speak of a spot on the face, into the report's.
std::vector<std::size_t> speaking_of(const PourState& state, const CheckReport& report,
                                     std::size_t element, Side side, Length x, Length z);

}  // namespace rb
