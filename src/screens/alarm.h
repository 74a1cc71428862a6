// What newly needs a hand, once each: for a tone that tells it to those who do not look.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/ids.h"
#include "check/finding.h"

namespace rb::screens {

class Alarm {
 public:
  /// The weight of the worst finding that was not there the time before: stop or mend. None when
  /// nothing is new, and for what stood already when a pour was first looked at.
  std::optional<Weight> hear(const PourId& pour, const std::vector<Finding>& attention);

 private:
  std::optional<PourId> pour_{};
  std::set<std::string> known_{};
};

}  // namespace rb::screens
