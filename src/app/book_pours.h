// Pours out of a book, folded. Only those asked for are read.
#pragma once

#include <vector>

#include "base/path.h"
#include "pour/log/state.h"
#include "pour/log/unread.h"
#include "store/book/logbook.h"

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
  std::string damaged_ids;  ///< "N1-5, N1-7 to N1-9"; empty where nothing is damaged
};
/// `waiting`: taps on their way to the book; those of this pour that it has not yet come last.
Result<ReadPour> read_pour(const Logbook& book, const PourId& pour,
                           const std::vector<Tapped>& waiting = {});

/// Says on standard error what of a pour does not read. True when something is damaged: a command
/// goes on with the rest and ends with Exit::book.
bool tell_unread(const Path& book, const ReadPour& read);

/// For a pour without its plan: the error that says so, of kind book.
Failed no_plan(const Path& book, const ReadPour& read);

}  // namespace rb
