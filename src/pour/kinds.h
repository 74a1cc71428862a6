// Which words for a kind of event this program knows.
#pragma once

#include <string_view>

namespace rb {

/// Whether a script's `do` names a kind this program knows; books of a newer program may hold
/// others.
bool is_kind(std::string_view word);

}  // namespace rb
