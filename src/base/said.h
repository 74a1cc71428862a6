// Marks words that are told later in the reader's language, so that gettext's own tools find them:
// xgettext --keyword=said. What is marked must stand in every finished catalogue.
#pragma once

namespace rb {

/// Words of ours. Made by said(), or of what is the same in every language (an option's name).
struct Said {
  const char* english;
  constexpr operator const char*() const { return english; }
};

constexpr Said said(const char* english) {
  return {english};
}

}  // namespace rb
