// A hash short enough to be photographed, read out and written down.
#pragma once

#include <string>
#include <string_view>

namespace rb {

/// Ten characters in two groups ("7K3MD-P9QXT") for a hash of at least 16 hex digits: letters and
/// digits that are not taken for one another when written (no 0 O 1 I L), no vowels. One in
/// 28^10, 3 x 10^14, fits by chance. Empty for any other text.
std::string short_code(std::string_view hex);

/// Whether a text is one, however it is spaced and in capitals or not; as short_code() writes it.
std::string read_short_code(std::string_view text);

}  // namespace rb
