// Going through the fields of an event kind, by its descriptor in event.h.
#pragma once

#include <tuple>
#include <type_traits>
#include <variant>

#include "pour/log/event.h"

namespace rb {

/// Calls with(field) for each field of a kind's descriptor.
template <class Kind, class With>
constexpr void for_fields(const With& with) {
  std::apply([&](const auto&... field) { (with(field), ...); }, Kind::fields());
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
