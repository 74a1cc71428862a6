#include "screens/words.h"

namespace rb::screens {

extern const WordTable kEnglish;
extern const WordTable kSpanish;

const WordTable& table_of(Language language) {
  return language == Language::spanish ? kSpanish : kEnglish;
}

const char* word(Language language, Word id) {
  return table_of(language)[static_cast<std::size_t>(id)].text;
}

}  // namespace rb::screens
