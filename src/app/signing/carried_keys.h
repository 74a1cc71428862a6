// Keys people made in earlier pours of a book, to be carried into another.
#pragma once

#include <vector>

#include "pour/log/state.h"
#include "store/book/logbook.h"

namespace rb {

/// Of each person of the plan who has no key in this pour: the one enrolled last in another pour of
/// the book whose plan knows somebody of the same id, name and role; `from` tells where it was
/// made. Plans number their people alike, so that an id alone is nobody. Folds at most 30 pours,
/// the latest ones.
Result<std::vector<event::Enrol>> carried_keys(const Logbook& book, const PourState& state);

}  // namespace rb
