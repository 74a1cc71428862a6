// English into the reader's language, by catalogues in gettext's form
// (https://www.gnu.org/software/ gettext/manual/): built into the program, edited by a translator
// without a compiler. What a catalogue lacks stays English.
#pragma once

#include "base/said.h"
#include "words/language.h"

namespace rb {

/// The words in a language. `context` tells apart what is one word in English and two elsewhere.
/// Both must live as long as the answer is used: string literals do.
const char* told(Language language, const char* english, const char* context = nullptr);

/// The same where a number decides the form: told(language, "{} tap", "{} taps", 3).
const char* told(Language language, const char* one, const char* many, long count);

/// Whether the catalogue has the words; English has all.
bool has_words(Language language, const char* english, const char* context = nullptr);

}  // namespace rb
