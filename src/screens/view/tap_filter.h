// Which taps of a pour, and which findings, a list shows.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"

namespace rb::screens {

struct TapFilter {
  std::optional<RowPlace> row{};
  std::optional<int> lift{};         ///< from its start to the start of the next
  std::optional<PersonId> person{};  ///< who tapped
  bool late = false;                 ///< entered late
  bool corrected = false;            ///< corrected or struck
  [[nodiscard]] bool any() const { return row || lift || person || late || corrected; }
  bool operator==(const TapFilter&) const = default;
};

/// What a filter may be set to: what the pour has taps of.
struct FilterChoices {
  std::vector<RowPlace> rows{};
  std::vector<int> lifts{};
  std::vector<PersonId> people{};
};
FilterChoices filter_choices(const PourState& state);

bool lets_through(const PourState& state, const TapFilter& filter, EventRef tap);
/// The latest first.
std::vector<EventRef> filtered_taps(const PourState& state, const TapFilter& filter);

}  // namespace rb::screens
