// What the review screen shows, worked out once for a pour as it stands and kept from frame to
// frame: a finger that goes along the time axis asks for another moment every frame. A pour that
// got one more tap is worked out anew.
#pragma once

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "check/check.h"
#include "pour/log/state.h"
#include "screens/review/axis_view.h"
#include "screens/review/face_view.h"
#include "screens/view/spot_view.h"
#include "screens/view/tap_filter.h"

namespace rb::screens {

class ReviewMemory {
 public:
  ReviewMemory();
  ~ReviewMemory();
  ReviewMemory(const ReviewMemory&) = delete;
  ReviewMemory& operator=(const ReviewMemory&) = delete;

  /// The pour of this frame; looked at until the next look.
  void look(const PourState& state, const CheckReport& report);
  [[nodiscard]] const PourState& state() const;
  [[nodiscard]] const CheckReport& report() const;

  /// Keys of the groups of findings (Finding::group) that were accepted as they are.
  const std::set<std::string>& accepted();
  /// The map as it was at a moment on the pour's clock. Good until asked again.
  const FaceMap& face(FaceKind kind, std::size_t element, Side side, Seconds at);
  const AxisView& axis(std::size_t element);
  const SpotView& spot(std::size_t element, Side side, Spot spot);
  const std::vector<FaceMark>& marks(std::size_t element, Side side);
  /// Where a finding of the report is on the face asked for last; none: it names no part of it.
  std::optional<Patch> place(std::size_t finding);
  /// The taps a finding of the report rests on (check/review.h).
  const std::vector<EventRef>& behind(std::size_t finding);
  /// By the row and the lift it names, and by the taps it rests on.
  bool lets_through(const TapFilter& filter, std::size_t finding);

 private:
  struct Inside;
  std::unique_ptr<Inside> in_;
};

}  // namespace rb::screens
