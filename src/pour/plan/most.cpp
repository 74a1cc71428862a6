#include "pour/plan/most.h"

#include <algorithm>

namespace rb {

namespace {

bool goes_on(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

}  // namespace

std::size_t letters_of(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return !goes_on(c); }));
}

std::string_view first_letters(std::string_view text, std::size_t letters) {
  std::size_t seen = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!goes_on(text[i]) && ++seen > letters) return text.substr(0, i);
  }
  return text;
}

}  // namespace rb
