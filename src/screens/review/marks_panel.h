// The table of a face's numbered marks, and one finding with the taps it rests on. Inside this
// room.
#pragma once

#include "screens/entry/stage.h"
#include "screens/review/face_view.h"

namespace rb::screens {

/// The mark that was tapped, into `marks`.
std::optional<std::size_t> draw_marks(Stage& stage, const Box& box,
                                      const std::vector<FaceMark>& marks, const PourView& view,
                                      ReviewDraft& draft);

/// Which finding a draft is of, into the report; none: it is not found any more.
std::optional<std::size_t> finding_of(const CheckReport& report, const ReviewDraft& draft);

/// The sentence of a finding of the report and, under it, the taps it rests on.
void draw_behind(Stage& stage, const Box& box, std::size_t index, const PourView& view,
                 ReviewDraft& draft);

}  // namespace rb::screens
