// Every word the screens write, by id: in English in list/*.inc, in other languages in the
// catalogues of src/words, where a test names what a finished one lacks. `{}` stands for what is
// filled in.
#pragma once

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

#include "words/catalogue.h"

namespace rb::screens {

enum class Word {
#define RISEBOOK_WORD(id, ...) id,
#include "screens/words/list/book.inc"
#include "screens/words/list/copies.inc"
#include "screens/words/list/live.inc"
#include "screens/words/list/plan.inc"
#include "screens/words/list/pour.inc"
#include "screens/words/list/review.inc"
#include "screens/words/list/sign.inc"
#undef RISEBOOK_WORD
  count_
};
inline constexpr std::size_t kWords = static_cast<std::size_t>(Word::count_);

struct WordEntry {
  Word word;
  const char* text;
  /// Tells apart what is one word in English and two elsewhere: a catalogue's msgctxt.
  const char* context = nullptr;
};
using WordTable = std::array<WordEntry, kWords>;

/// In English.
const WordTable& word_table();
const char* word(Language language, Word id);

/// A word with its gaps filled.
template <class... Args>
std::string filled(Language language, Word id, Args&&... args) {
  return fmt::format(fmt::runtime(word(language, id)), std::forward<Args>(args)...);
}

}  // namespace rb::screens
