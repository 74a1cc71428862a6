// Going through the fields of an event kind, by its descriptor in event.h.
#pragma once

#include <tuple>
#include <type_traits>
#include <utility>
#include <variant>

#include "pour/log/event.h"

namespace rb {

/// Calls with(field) for each field of a kind's descriptor. By number: std::apply would ask of each
/// kind what its call throws, at a third more to compile.
template <class Kind, class With>
constexpr void for_fields(const With& with) {
  constexpr auto kFields = Kind::fields();
  [&]<std::size_t... I>(std::index_sequence<I...> /*numbers*/) {
    (with(std::get<I>(kFields)), ...);
  }
  (std::make_index_sequence<std::tuple_size_v<decltype(Kind::fields())>>{});
}

/// Calls with(moment) for the moment an event happened and those it tells of that move with it.
template <class With>
void for_moments(Event& event, const With& with) {
  with(event.at);
  std::visit(
      [&]<class Kind>(Kind& kind) {
        for_fields<Kind>([&](const auto& field) {
          using F = std::remove_cvref_t<decltype(field)>;
          if constexpr (requires { typename F::Value; }) {
            auto& value = kind.*(field.at);
            if constexpr (std::is_same_v<typename F::Value, Moment>) {
              if (field.moves) with(value);
            } else if constexpr (std::is_same_v<typename F::Value, std::optional<Moment>>) {
              if (field.moves && value) with(*value);
            }
          }
        });
      },
      event.what);
}

}  // namespace rb
