// A pour script: JSON Lines, the format of import, export and test pours (version 1).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "pour/log/event.h"

namespace rb {

struct Script {
  PourId pour;
  std::vector<Event> events;  ///< the first is pour-open
};

/// Reads a whole script or nothing of it: the first bad line is the error, with file, line, field
/// and what was expected. Blank lines are passed over. Line ids must be unique, and fix, strike and
/// repair must name an earlier line.
Result<Script> read_script(std::string_view text, const std::string& file);

/// The same events as lines; read_script gives them back.
std::string write_script(const std::vector<Event>& events);

}  // namespace rb
