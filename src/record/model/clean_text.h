// Text as it may stand in a cell, whatever was typed or imported.
#pragma once

#include <string>
#include <string_view>

namespace rb {

/// Valid UTF-8 (what is not becomes U+FFFD); tabs and line ends of all kinds become one newline or
/// blank; other control characters are dropped.
std::string clean_text(std::string_view text);

}  // namespace rb
