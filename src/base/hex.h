// Bytes that stand in a line of text: keys, hashes and signatures, two lower-case digits a byte.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace rb {

struct Hex {
  std::string digits;
  [[nodiscard]] bool empty() const { return digits.empty(); }
  [[nodiscard]] std::size_t bytes() const { return digits.size() / 2; }
  bool operator==(const Hex&) const = default;
};

/// Whether a text is an even number of such digits; the empty text is.
bool is_hex(std::string_view text);
Hex hex_of(std::span<const unsigned char> bytes);
/// None where the text is no such digits.
std::optional<std::vector<unsigned char>> bytes_of(const Hex& hex);

}  // namespace rb
