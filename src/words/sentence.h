// Sentences with figures and names in them, for a reader of one language and one system of units.
//
// A sentence is written in English with its facts named in braces: "{row} ran {measured}". The
// facts are data; only here do they become words, so that no name is ever taken for a figure. A
// figure that is part of the words stands in braces itself, "{0.5 m}", and is shown in the reader's
// units.
#pragma once

#include <chrono>
#include <string>
#include <vector>

#include "base/measure.h"
#include "base/moment.h"
#include "base/result.h"
#include "base/saying.h"
#include "words/catalogue.h"

namespace rb {

/// How one reads: the language, the units, and whether units are written as a script writes them
/// ("m3", "degC": a terminal) or as print does ("m\u00B3", "\u00B0C").
struct Voice {
  Language language{};
  Units units = Units::si;
  bool plain = false;
  std::chrono::minutes utc_offset{0};  ///< of the site's clock; plain tells moments in full, in UTC
};
inline constexpr Voice kTerminal{{}, Units::si, true};

/// The sentence with its facts in it. `{name+}` puts a sign before a figure. A name without a fact
/// stays as it stands, so that it is seen.
std::string filled(const char* sentence, const Facts& facts, const Voice& voice);

/// What is said, and an error with its place and what to do about it.
std::string words_of(const Saying& saying, const Voice& voice);
std::string words_of(const Error& error, const Voice& voice);

/// A figure with its unit.
std::string amount_text(const Amount& figure, const Voice& voice,
                        Rounding rounding = Rounding::nearest);

/// The names in braces, each once, in order: what a translation must have, too.
std::vector<std::string> names_in(const char* sentence);

}  // namespace rb
