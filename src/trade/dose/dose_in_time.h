// The dose over a face at any moment of a pour: of the concrete that had come by then what it had
// got by then. Asked for moment after moment, as a finger goes along them; what came out the same
// is not worked out again.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "trade/dose/dose.h"

namespace rb::trade {

/// What had happened to a face by a moment: its tops up to then, and what ran until then.
Face as_of(const Face& face, Seconds moment);

class DoseInTime {
 public:
  explicit DoseInTime(const Face& face);

  /// The field between two heights, over all bays.
  struct Layer {
    Length from, to;
    /// Another number whenever the field is another, never used twice by one DoseInTime.
    std::uint64_t turn = 0;
    DoseField field;
  };
  /// From the base up; together dose_field(as_of(face, moment)), cut at the layers' edges. Good
  /// until asked again.
  const std::vector<Layer>& at(Seconds moment);

 private:
  struct Part {
    Face face;  ///< part_for() the layer: nothing else bears on it
    std::vector<Band> bands;
    std::vector<Running> running;  ///< each of its motors' once
    Seconds seen{};                ///< the moment its layer's field is of
    std::shared_ptr<const Layer> whole{};
  };
  /// Whether anything of a part's field may differ between two moments.
  static bool differs(const Part& part, Seconds a, Seconds b);

  std::vector<Part> parts_;
  std::vector<Layer> layers_;
  std::uint64_t turns_ = 0;
};

}  // namespace rb::trade
