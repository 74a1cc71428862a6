#include "screens/words/words.h"

#include <vector>

namespace rb::screens {

extern const WordTable kWordTable;

const WordTable& word_table() {
  return kWordTable;
}

const char* word(Language language, Word id) {
  // Asked some hundred times a frame: each language's words are looked up once.
  static const auto tables = [] {
    std::vector<std::array<const char*, kWords>> all;
    for (const Language one : Language::all()) {
      auto& table = all.emplace_back();
      for (std::size_t i = 0; i < kWords; ++i) {
        table.at(i) = told(one, kWordTable[i].text, kWordTable[i].context);
      }
    }
    return all;
  }();
  return tables[language.index()][static_cast<std::size_t>(id)];
}

}  // namespace rb::screens
