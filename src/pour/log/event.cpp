#include "pour/log/event.h"

#include <algorithm>
#include <array>
#include <utility>

namespace rb {

namespace {

template <std::size_t... I>
std::vector<std::string> words_of(std::index_sequence<I...> /*kinds*/) {
  return {std::variant_alternative_t<I, Happening>::kWord...};
}

}  // namespace

namespace event {

std::span<const char* const> words_of(Moving /*any*/) {
  static constexpr std::array kWords{"form", "motor"};
  return kWords;
}

const char* to_text(Moving what) {
  return words_of(what)[static_cast<std::size_t>(what)];
}

}  // namespace event

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
