#include "pour/kinds.h"

#include <utility>

#include "pour/event.h"

namespace rb {

namespace {

template <std::size_t... I>
bool among(std::string_view word, std::index_sequence<I...>) {
  return ((word == kind_text(Happening{std::in_place_index<I>})) || ...);
}

}  // namespace

bool is_kind(std::string_view word) {
  return among(word, std::make_index_sequence<std::variant_size_v<Happening>>{});
}

}  // namespace rb
