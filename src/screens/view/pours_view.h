// The pours of a book, to choose from.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/ids.h"
#include "pour/log/state.h"
#include "screens/seen/damage_seen.h"

namespace rb::screens {

/// One pour as the list shows it.
struct PourCard {
  PourId id{};
  std::string site{}, name{};
  Moment opened{};
  std::optional<Moment> closed{};
  int lifts_done = 0, lifts_planned = 0;
  int rows_running = 0;
  std::shared_ptr<const Plan> plan{};  ///< to make a new pour from
  std::string placing{};               ///< the elements being placed, "W1, W2"
  bool from_script = false;            ///< some of it was brought in, not tapped
  DamageSeen damage{};
};

/// Which part of the list a screen was given.
struct PoursPart {
  std::size_t first = 0;  ///< of the list
  std::size_t total = 0;  ///< in the list: what `find` finds in the book
  std::string find{};
  bool coming = false;  ///< another part was asked for
};

PourCard make_pour_card(const PourState& state);

/// Open pours first, the latest first within each.
void order_cards(std::vector<PourCard>& cards);

}  // namespace rb::screens
