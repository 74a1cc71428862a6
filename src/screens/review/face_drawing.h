// A face drawn as a map, with its key and its marks. Inside this room.
#pragma once

#include <optional>

#include "screens/entry/stage.h"
#include "screens/review/face_view.h"

namespace rb::screens {

/// What a finger asked for on the face.
struct FaceTouch {
  std::optional<Spot> spot{};
  std::optional<std::size_t> mark{};  ///< into the marks drawn
};
/// What is pointed out: a spot, or the place of a finding.
struct FaceFocus {
  std::optional<Spot> spot{};
  std::optional<Patch> place{};
};

FaceTouch draw_face(Stage& stage, const Box& box, const FaceMap& view,
                    const std::vector<FaceMark>& marks, const FaceFocus& focus);

/// What the looks of a map stand for, in two lines under what the map is of.
void draw_face_keys(Stage& stage, const Box& box, FaceKind kind, const std::vector<FaceKey>& keys);
/// The height it wants.
float face_keys_height(const Canvas& canvas);

}  // namespace rb::screens
