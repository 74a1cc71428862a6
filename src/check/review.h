// What stands of what was found: each group of findings is open, accepted or sent back, by whom,
// when and why. An acceptance holds for the figures it was given for: a group whose figures change
// is open again.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/hex.h"
#include "check/check.h"

namespace rb {

enum class Standing { open, accepted, sent_back };
const char* to_text(Standing standing);

struct ReviewedGroup {
  /// Finding::group: rule, place, ticket or inverter, and which event of the pour it is about. The
  /// same after a replay, on any tablet.
  std::string key;
  Hex figures;                       ///< digest of what was found: places, times, figures, limits
  std::size_t first = 0, count = 0;  ///< into CheckReport::findings
  Severity severity = Severity::note;
  Standing standing = Standing::open;
  /// Who said so, when and why, into PourState::reviews; of an open group what was said of it for
  /// other figures last. None: nothing was.
  std::optional<std::size_t> last{};
  /// Something was said of it for other figures than it has now.
  [[nodiscard]] bool came_back() const { return standing == Standing::open && last; }
  bool operator==(const ReviewedGroup&) const = default;
};

struct Review {
  std::vector<ReviewedGroup> groups;  ///< in the order of the report
  std::size_t open = 0, accepted = 0, sent_back = 0;
  bool operator==(const Review&) const = default;
};

Review review_of(const PourState& state, const CheckReport& report);

/// The digest of a group: of what each of its findings says of place, time, figures and limit, in
/// any order. Figures go in with six digits, moments to the millisecond; a figure that grows by
/// itself until somebody acts is left out (Finding::growing).
Hex figures_of(const PourState& state, std::span<const Finding> group);

/// The taps a finding rests on, in order of time, each once: the event it is about; of its load the
/// ticket, discharges and tests; of its row how it hung and the runs that meet the finding's time;
/// of its lift the start, the readings, the insertions and the runs of rows that reach it; of its
/// inverter what it was set to and what ran on it.
std::vector<EventRef> taps_behind(const PourState& state, const Finding& finding);

/// Keys of the groups of weight stop or mend that are not accepted: who signs names them.
std::vector<std::string> to_be_named(const Review& review);
/// Of those, the ones a signature does not name.
std::vector<std::string> unnamed(const Review& review, const event::Sign& sign);

}  // namespace rb
