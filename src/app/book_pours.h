// Pours out of a book, folded. Only those asked for are read.
#pragma once

#include <vector>

#include "app/commands.h"
#include "pour/state.h"
#include "pour/unread.h"
#include "store/logbook.h"

namespace rb {

/// The one pour named, or all in the order they came. An error when it is not there (kind input).
Result<std::vector<PourId>> chosen_pours(const Logbook& book,
                                         const std::optional<std::string>& pour);

/// A pour as far as it reads; no state where the event that opens it is damaged.
struct ReadPour {
  PourId pour;
  std::optional<PourState> state;
  std::size_t whole = 0;  ///< events
  Unread unread;
};
Result<ReadPour> read_pour(const Logbook& book, const PourId& pour);

/// An error when it cannot be read.
Result<PourState> folded(const Logbook& book, const PourId& pour);

/// Both.
Result<std::vector<PourState>> pours_of(const Logbook& book,
                                        const std::optional<std::string>& pour);

}  // namespace rb
