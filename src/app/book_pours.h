// Pours out of a book, folded.
#pragma once

#include <vector>

#include "app/commands.h"
#include "pour/state.h"
#include "store/logbook.h"

namespace rb {

/// The one pour named, or all. An error when it is not there (kind input) or cannot be read.
Result<std::vector<PourState>> pours_of(const Logbook& book,
                                        const std::optional<std::string>& pour);

}  // namespace rb
