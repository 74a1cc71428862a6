#include "base/short_code.h"

#include <cctype>
#include <charconv>
#include <cstdint>

namespace rb {

namespace {
constexpr std::string_view kLetters = "23456789BCDFGHJKMNPQRSTVWXYZ";
constexpr std::size_t kLength = 10, kGroup = 5;
}  // namespace

std::string short_code(std::string_view hex) {
  if (hex.size() < 16) return {};
  std::uint64_t number = 0;
  const auto [end, wrong] = std::from_chars(hex.data(), hex.data() + 16, number, 16);
  if (wrong != std::errc{} || end != hex.data() + 16) return {};
  std::string code;
  for (std::size_t i = 0; i < kLength; ++i) {
    if (i == kGroup) code += '-';
    code += kLetters[number % kLetters.size()];
    number /= kLetters.size();
  }
  return code;
}

std::string read_short_code(std::string_view text) {
  std::string code;
  for (const char c : text) {
    if (c == ' ' || c == '-') continue;
    const auto letter = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    if (kLetters.find(letter) == std::string_view::npos || code.size() == kLength + 1) return {};
    if (code.size() == kGroup) code += '-';
    code += letter;
  }
  return code.size() == kLength + 1 ? code : std::string{};
}

}  // namespace rb
