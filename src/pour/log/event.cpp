#include "pour/log/event.h"

#include <algorithm>
#include <utility>

namespace rb {

namespace {

template <std::size_t... I>
std::vector<std::string> words_of(std::index_sequence<I...> /*kinds*/) {
  return {std::variant_alternative_t<I, Happening>::kWord...};
}

}  // namespace

const char* kind_text(const Happening& what) {
  return std::visit([](const auto& kind) { return kind.kWord; }, what);
}

const std::vector<std::string>& kind_words() {
  static const std::vector<std::string> words =
      words_of(std::make_index_sequence<std::variant_size_v<Happening>>{});
  return words;
}

bool is_kind(std::string_view word) {
  return std::find(kind_words().begin(), kind_words().end(), word) != kind_words().end();
}

}  // namespace rb
