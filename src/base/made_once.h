// A variant of many kinds whose copying, moving and destroying is compiled in one file, not anew by
// every file that handles one: that took seconds of each. Its header says
// `extern template struct MadeOnce<V>;`, its source `template struct MadeOnce<V>;`.
#pragma once

#include <type_traits>
#include <utility>
#include <variant>

namespace rb {

template <class Variant>
struct MadeOnce;

/// Visited and asked as the variant it is. Moves are taken not to throw, which quantities do not
/// promise, but keep.
template <class... Kinds>
struct MadeOnce<std::variant<Kinds...>> : std::variant<Kinds...> {
  using Variant = std::variant<Kinds...>;

  MadeOnce();
  template <class Kind>
  requires(std::is_same_v<Kind, Kinds> || ...)
      MadeOnce(Kind kind)  // NOLINT(google-explicit-constructor): as a variant takes it
      : Variant(std::in_place_type<Kind>, std::move(kind)) {}
  MadeOnce(const MadeOnce& other);
  MadeOnce(MadeOnce&& other) noexcept;
  MadeOnce& operator=(const MadeOnce& other);
  MadeOnce& operator=(MadeOnce&& other) noexcept;
  ~MadeOnce();
};

template <class... Kinds>
MadeOnce<std::variant<Kinds...>>::MadeOnce() : Variant() {}
template <class... Kinds>
MadeOnce<std::variant<Kinds...>>::MadeOnce(const MadeOnce& other) : Variant(other) {}
template <class... Kinds>
MadeOnce<std::variant<Kinds...>>::MadeOnce(MadeOnce&& other) noexcept
    : Variant(static_cast<Variant&&>(other)) {}
template <class... Kinds>
MadeOnce<std::variant<Kinds...>>& MadeOnce<std::variant<Kinds...>>::operator=(
    const MadeOnce& other) {
  Variant::operator=(other);
  return *this;
}
template <class... Kinds>
MadeOnce<std::variant<Kinds...>>& MadeOnce<std::variant<Kinds...>>::operator=(
    MadeOnce&& other) noexcept {
  Variant::operator=(static_cast<Variant&&>(other));
  return *this;
}
template <class... Kinds>
MadeOnce<std::variant<Kinds...>>::~MadeOnce() {}  // NOLINT(modernize-use-equals-default): made once

}  // namespace rb
