// What happened on the form: one value of one kind. A kind is told once, in one of the kinds_*.h:
// its word in a script, its fields (field.h), what is said of it, and its place in the list at the
// end; fold_happening.cpp says what it does.
#pragma once

#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "pour/log/kinds_after.h"
#include "pour/log/kinds_concrete.h"
#include "pour/log/kinds_paper.h"
#include "pour/log/kinds_placing.h"
#include "pour/log/kinds_review.h"

namespace rb {

namespace event {

template <class Tuple>
struct OneOf;
template <class... Kinds>
struct OneOf<std::tuple<Kinds...>> {
  using Type = std::variant<Kinds...>;
  template <class T>
  static constexpr bool kHolds = (std::is_same_v<T, Kinds> || ...);
};
using AllKinds = OneOf<decltype(std::tuple_cat(
    std::declval<PlacingKinds>(), std::declval<ConcreteKinds>(), std::declval<PaperKinds>(),
    std::declval<AfterKinds>(), std::declval<ReviewKinds>()))>;
using AnyKind = AllKinds::Type;

}  // namespace event

/// A variant of all kinds, visited and asked as one. What copies, moves and compares it is made
/// once, in happening.cpp: made anew by every file that handles an event, it took four seconds of
/// each.
struct Happening : event::AnyKind {
  Happening();
  template <class Kind>
  requires event::AllKinds::kHolds<Kind> Happening(
      Kind kind)  // NOLINT(google-explicit-constructor): as a variant takes it
      : event::AnyKind(std::in_place_type<Kind>, std::move(kind)) {}
  Happening(const Happening& other);
  Happening(Happening&& other) noexcept;
  Happening& operator=(const Happening& other);
  Happening& operator=(Happening&& other) noexcept;
  ~Happening();
  bool operator==(const Happening& other) const;
};

/// The word of an event's kind in a pour script ("lift-start").
const char* kind_text(const Happening& what);
/// Whether a script's `do` names a kind this program knows; books of a newer program may hold
/// others.
bool is_kind(std::string_view word);
/// The event that one speaks of by its id, as a correction or a repair does; null where it speaks
/// of none.
const EventId* target_of(const Happening& what);
EventId* target_of(Happening& what);
/// Every kind's word, in the order of Happening.
const std::vector<std::string>& kind_words();

}  // namespace rb
