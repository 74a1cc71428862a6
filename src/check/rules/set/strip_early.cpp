// strip-early: a form was stripped sooner than the plan allows, or before its concrete has set.
#include <algorithm>

#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/set_clock.h"

namespace rb {

namespace {

// When the last concrete came into an element, and when the last of it has set for certain.
struct Last {
  Seconds came{}, sets{};
};
std::optional<Last> last_concrete(const Look& look, std::size_t element) {
  const auto sets = set_steps(look.state, element, SetSide::late);
  std::optional<Last> last;
  for (const trade::TopCurve& top : look.state.elements[element].tops) {
    const auto came = top.standing() > Length{} ? top.reached(top.standing()) : std::nullopt;
    if (!came) continue;
    const Seconds set = trade::sets_at(sets, *came);
    last = last ? Last{std::max(last->came, *came), std::max(last->sets, set)} : Last{*came, set};
  }
  return last;
}

void look_strip_early(const Look& look, const Rule& rule, Findings& out) {
  for (const EventRef ref : look.state.strips) {
    const LogEntry& entry = look.state.log[ref];
    const auto& strip = std::get<event::Strip>(entry.event.what);
    const Element* element = look.plan().find(strip.element);
    if (element == nullptr) continue;
    const auto index = static_cast<std::size_t>(element - look.plan().elements.data());
    const auto last = last_concrete(look, index);
    if (!last) continue;
    const Seconds at = look.state.clock(entry.when);
    const Seconds until = element->strip_after ? last->came + *element->strip_after : last->sets;
    if (at >= until) continue;
    Finding f = found(rule);
    f.element = index;
    f.side = strip.side;
    f.from = at;
    f.measured = amount(at - last->came, Measure::any_span);
    f.limit = amount(until - last->came, Measure::any_span);
    f.source =
        element->strip_after
            ? Source{.code = Source::Code::plan, .field = "strip_after_s"}
            : Source{.code = Source::Code::rule,
                     .field = "initial_set_h",
                     .words = said(" from when the load was batched, by equivalent age (ASTM "
                                   "C1074), the late side")};
    f.ref = ref;
    f.sentence =
        said("{element}: stripped {measured} after its last concrete came; not before {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kStripEarly{
    {"strip-early", said("Stripped too early"), Severity::stop, Cost::lasting,
     "concrete that does not carry itself yet, and the people under it",
     said("the plan's, by the engineer; without one the late side of set (our own choice: set is "
          "far "
          "from strength)"),
     "strip_after_s of the element; without it the late set of its last concrete",
     "plan, by the engineer",
     said("Keep clear; tell the engineer before anything is loaded or stripped further"),
     Harm::people},
    look_strip_early};

}  // namespace rb
