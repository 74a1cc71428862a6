#include "pour/outlook/stripping.h"

#include "base/limits.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/hardening.h"

namespace rb {

namespace {

// A strength that nothing can show is held to the set of the concrete at least.
std::optional<StripTooSoon> too_soon(const PourState& state, std::size_t index, Seconds came,
                                     Seconds at) {
  const Element& element = state.plan->elements[index];
  if (!element.strip_after && element.strip_strength && strength_judged(state, index, at)) {
    return std::nullopt;
  }
  const Seconds until =
      element.strip_after ? came + *element.strip_after : last_set(state, index).value_or(came);
  if (at >= until) return std::nullopt;
  return StripTooSoon{at - came, until - came, element.strip_after.has_value()};
}

std::optional<StripTooWeak> too_weak(const PourState& state, std::size_t index, Seconds at) {
  const auto& wanted = state.plan->elements[index].strip_strength;
  if (!wanted || !strength_judged(state, index, at)) return std::nullopt;
  const auto shown = strength_shown(state, index, at).counts();
  if (shown && !under(*shown, *wanted)) return std::nullopt;
  return StripTooWeak{shown, *wanted};
}

bool has_a_role(const PourState& state, const PermitState& permit) {
  if (state.plan->people.empty()) return true;
  const Person* person = state.plan->find(state.log[permit.ref].event.by);
  return person != nullptr && !person->role.empty();
}

// The best that is to be said of the leave given.
void look_at_leave(const PourState& state, std::size_t element, Side side, Seconds at,
                   StripVerdict& verdict) {
  StripLeave best = StripLeave::none;
  for (std::size_t i = 0; i < state.permits.size(); ++i) {
    const PermitState& permit = state.permits[i];
    if (permit.element != element || permit.at > at) continue;
    if (permit.what.side.value_or(side) != side) continue;
    verdict.permit = i;
    if (best == StripLeave::counts) continue;
    best = permit.at < verdict.came    ? StripLeave::before_concrete
           : has_a_role(state, permit) ? StripLeave::counts
                                       : StripLeave::no_role;
  }
  if (state.plan->elements[element].strip_permit) verdict.leave = best;
}

}  // namespace

std::optional<StripVerdict> judge_strip(const PourState& state, std::size_t element, Side side,
                                        Seconds at) {
  const auto came = last_concrete(state, element);
  if (!came) return std::nullopt;
  StripVerdict verdict{.came = *came,
                       .soon = too_soon(state, element, *came, at),
                       .weak = too_weak(state, element, at),
                       .leave = StripLeave::not_asked,
                       .permit = std::nullopt};
  look_at_leave(state, element, side, at, verdict);
  return verdict;
}

}  // namespace rb
