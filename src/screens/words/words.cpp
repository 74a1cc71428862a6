#include "screens/words/words.h"

#include <vector>

namespace rb::screens {

const char* word(Language language, Word id) {
  // Asked some hundred times a frame: each language's words are looked up once.
  static const auto tables = [] {
    std::vector<std::array<const char*, kWords>> all;
    for (const Language one : Language::all()) {
      auto& table = all.emplace_back();
      for (std::size_t i = 0; i < kWords; ++i) {
        table.at(i) = told(one, word_table()[i].text, word_table()[i].context);
      }
    }
    return all;
  }();
  return tables[language.index()][static_cast<std::size_t>(id)];
}

}  // namespace rb::screens
