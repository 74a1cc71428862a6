// What needs a hand now, what is open behind it, and a tone for what newly needs a hand, once each,
// for those who do not look.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/ids.h"
#include "check/finding.h"
#include "screens/view/pour_view.h"

namespace rb::screens {

/// What was last true no longer ago than this is taken for true still.
inline constexpr Seconds kStillTrue{60};
/// Of a pour looked at for the first time: what was true within this needs a hand, seen or not.
inline constexpr Seconds kAttention{600};

/// What of a report the foreman is told without asking: stop and mend, of causes nobody accepted.
struct Attention {
  std::vector<Finding> now{};  ///< needs a hand: news not looked at yet, or a stop that is still so
  OpenBehind behind{};         ///< the rest, seen or old: it stays open, however long ago
};

class Alarm {
 public:
  /// The gravest first, of one severity what hurts people, then the latest; what the plan alone is
  /// at fault for comes behind what happens. What is new needs a hand until it was looked at,
  /// however long that takes: no time ends it. What stood when a pour was first looked at is no
  /// news. `accepted`: keys of groups (Finding::group) that were accepted as they are.
  Attention attention(const PourId& pour, const std::vector<Finding>& findings, Seconds now,
                      const std::set<std::string>& accepted = {});

  /// The user was shown it in full; true when he had not been before.
  bool saw(const Finding& finding);

  /// The severity of the worst finding that was not there the time before: stop or mend. None when
  /// nothing is new, and for what stood already when a pour was first looked at.
  std::optional<Severity> hear(const PourId& pour, const std::vector<Finding>& attention);

 private:
  std::optional<PourId> seen_in_{}, heard_in_{};
  std::map<std::string, bool> seen_{};  ///< whether it was looked at, by what it is about
  std::set<std::string> known_{};
};

}  // namespace rb::screens
