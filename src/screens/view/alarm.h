// What needs a hand now, and a tone for what newly does, once each, for those who do not look.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/ids.h"
#include "check/finding.h"

namespace rb::screens {

/// A past finding without an end stays under attention this long after it was last true.
inline constexpr Seconds kAttention{600};

class Alarm {
 public:
  /// What of a report needs a hand now: still true, or true a short while ago. The gravest first,
  /// of one severity what hurts people, then the latest; what the plan alone is at fault for comes
  /// behind what happens. What is found out late (a top read after the row was rested) stands as
  /// long from when it was first found; what stood when a pour was first looked at is no news.
  std::vector<Finding> attention(const PourId& pour, const std::vector<Finding>& findings,
                                 Seconds now);

  /// The severity of the worst finding that was not there the time before: stop or mend. None when
  /// nothing is new, and for what stood already when a pour was first looked at.
  std::optional<Severity> hear(const PourId& pour, const std::vector<Finding>& attention);

 private:
  std::optional<PourId> seen_in_{}, heard_in_{};
  std::map<std::string, std::optional<Seconds>> seen_{};  ///< since when, for what is news
  std::set<std::string> known_{};
};

}  // namespace rb::screens
