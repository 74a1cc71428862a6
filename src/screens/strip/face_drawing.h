// A stripped face drawn to scale. The far side is drawn as one stands before it, so that a finger
// draws what the eye sees; what is kept counts from the near side's left end all the same.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// Between the glass and the face.
class FaceFrame {
 public:
  FaceFrame(const Box& room, const FaceView& face);
  [[nodiscard]] const Box& box() const { return box_; }
  [[nodiscard]] Box box_of(const Patch& patch) const;
  [[nodiscard]] Point point_of(Length x, Length z) const;
  [[nodiscard]] Length x_at(Point at) const;
  [[nodiscard]] Length z_at(Point at) const;
  /// The rectangle between two points of the glass, cut to the face.
  [[nodiscard]] Patch patch_between(Point a, Point b) const;
  /// What a span of the glass is on the face.
  [[nodiscard]] Length length_of(float px) const;

 private:
  Box box_{};
  float px_per_m_ = 1;
  bool mirrored_ = false;
};

/// Concrete, openings, lifts, bays by number and blemishes by number; `drawn` is under way.
void draw_face(Stage& stage, const FaceFrame& frame, const FaceView& face,
               const std::optional<Patch>& drawn);

}  // namespace rb::screens
