#include "words/sentence.h"

#include <algorithm>
#include <string_view>

namespace rb {

namespace {

Manner manner_of(const Voice& voice) {
  return {[language = voice.language](const char* english) { return told(language, english); },
          voice.units, voice.plain, voice.utc_offset};
}

}  // namespace

std::string amount_text(const Amount& figure, const Voice& voice, Rounding rounding) {
  return amount_text(figure, manner_of(voice), rounding);
}

std::string filled(const char* sentence, const Facts& facts, const Voice& voice) {
  return fill(sentence, facts, manner_of(voice));
}

std::string words_of(const Saying& saying, const Voice& voice) {
  return fill(saying, manner_of(voice));
}

std::string words_of(const Error& error, const Voice& voice) {
  return fill(error, manner_of(voice));
}

std::vector<std::string> names_in(const char* sentence) {
  const std::string_view text = sentence;
  std::vector<std::string> names;
  for (std::size_t open = text.find('{'); open != std::string_view::npos;
       open = text.find('{', open + 1)) {
    const auto close = text.find('}', open);
    if (close == std::string_view::npos) break;
    std::string name{text.substr(open + 1, close - open - 1)};
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return names;
}

}  // namespace rb
