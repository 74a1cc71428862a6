// Events and corrections in words short enough for a cell.
#pragma once

#include <string>

#include "pour/log/event.h"
#include "pour/log/happening.h"
#include "words/catalogue.h"

namespace rb {

/// "top: element W1, height 1.2" from an event or from its script line; who and when are left out.
/// Numbers are those of the script (SI).
std::string event_words(const Event& event, Language language = {});
std::string line_words(const std::string& line, Language language = {});

/// "top W1: height 1.2 -> 1.4" for the fields that differ between two script lines.
std::string change_words(const std::string& before, const std::string& after,
                         Language language = {});

/// A repair's note, what was done, with what and by whom, as far as they are told.
std::string repair_words(const event::Repair& repair);

}  // namespace rb
