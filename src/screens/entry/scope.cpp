#include "screens/entry/scope.h"

#include <functional>
#include <string>
#include <string_view>

namespace rb::screens {

namespace {

std::uint64_t mixed(std::uint64_t a, std::uint64_t b) {
  return a * 0x9E3779B97F4A7C15ULL + b + 1;
}

template <class T>
std::uint64_t number(T value) {
  return static_cast<std::uint64_t>(value);
}

// What a panel asks for just now. A panel with no step and no page asks for one thing only.
struct StepOf {
  template <class Draft>
  std::uint64_t operator()(const Draft& draft) const {
    std::uint64_t step = 0;
    if constexpr (requires { draft.step; }) step = mixed(step, number(draft.step));
    if constexpr (requires { draft.use; }) step = mixed(step, number(draft.use));
    if constexpr (requires { draft.page; }) step = mixed(step, number(draft.page));
    if constexpr (requires { draft.turn; }) step = mixed(step, number(draft.turn));
    if constexpr (requires { draft.strike; }) step = mixed(step, number(draft.strike));
    if constexpr (requires { draft.figure.has_value(); }) {
      step = mixed(step, draft.figure ? number(draft.figure->what) + 1 : 0);
    }
    if constexpr (requires { draft.filter.choosing; }) {
      step = mixed(mixed(step, number(draft.filter.choosing)), number(draft.filter.page));
    }
    if constexpr (requires { draft.spot.has_value(); }) {
      step = mixed(step, number(draft.kind) * 4 + number(draft.side) * 2 + (draft.spot ? 1 : 0));
      step = mixed(step, draft.cause.empty() ? 0 : 1);
    }
    if constexpr (requires { draft.noting.has_value(); }) step = mixed(step, draft.noting ? 1 : 0);
    if constexpr (requires { draft.typing.has_value(); }) step = mixed(step, draft.typing ? 1 : 0);
    return step;
  }
};

std::uint64_t of_plan(const PlanEdit& edit) {
  std::uint64_t step = mixed(number(edit.page), edit.of);
  step = mixed(step, number(edit.turn));
  step = mixed(step, number(edit.naming));
  step = mixed(step, edit.removing ? 1 : 0);
  if (!edit.field) return step;
  const std::uint64_t name = std::hash<std::string_view>{}(edit.field->field.name);
  return mixed(mixed(mixed(step, name), edit.field->of), edit.field->item);
}

}  // namespace

std::uint64_t scope_of(const PourId& pour, std::size_t element) {
  return mixed(std::hash<std::string>{}(pour.text), element);
}

std::uint64_t scope_of(const Drafts& drafts) {
  const std::uint64_t panel = mixed(drafts.dialog.index(), std::visit(StepOf{}, drafts.dialog));
  const bool planning = std::holds_alternative<PlanPanel>(drafts.dialog) && drafts.plan;
  return planning ? mixed(panel, of_plan(*drafts.plan)) : panel;
}

}  // namespace rb::screens

template struct rb::MadeOnce<rb::screens::AnyDialog>;
