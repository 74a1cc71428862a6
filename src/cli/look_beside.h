// What the note of the head says against a book that is opened.
#pragma once

#include <optional>

#include "cli/commands.h"
#include "screens/book/ui.h"

namespace rb {

/// A book shorter than its note, or another than it tells of: to be told before the first tap. None
/// where they agree, no note is there, or the book cannot be read.
std::optional<screens::Trouble> note_trouble(const Path& book);

}  // namespace rb
