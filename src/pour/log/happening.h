// What happened on the form: one value of one kind. A kind is told once, in one of the kinds_*.h:
// its word in a script, its fields (field.h), what is said of it, and its place in the list at the
// end; fold_happening.cpp says what it does.
#pragma once

#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <variant>
#include <vector>

#include "base/made_once.h"
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
};
using AnyKind = OneOf<decltype(std::tuple_cat(
    std::declval<PlacingKinds>(), std::declval<ConcreteKinds>(), std::declval<PaperKinds>(),
    std::declval<AfterKinds>(), std::declval<ReviewKinds>()))>::Type;

}  // namespace event

extern template struct MadeOnce<event::AnyKind>;

/// Any of them, visited and asked as a variant.
struct Happening : MadeOnce<event::AnyKind> {
  using MadeOnce::MadeOnce;
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
