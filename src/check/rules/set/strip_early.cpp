// strip-early: a form was stripped sooner than the plan allows, before the strength it asks for was
// shown, or before its concrete has set.
#include "check/after_pour.h"
#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/hardening.h"

namespace rb {

namespace {

struct Stripped {
  std::size_t element = 0;
  Side side = Side::near_side;
  EventRef ref = 0;
  Seconds at{}, came{};
};

// Leave given by name clears nothing; it is told beside. Nothing where none was given.
FactValue permit_words(const Look& look, const Stripped& strip) {
  const PermitState* last = nullptr;
  for (const PermitState& permit : look.state.permits) {
    if (permit.element != strip.element || permit.at > strip.at) continue;
    if (permit.what.side.value_or(strip.side) == strip.side) last = &permit;
  }
  if (last == nullptr) return std::string{};
  const PersonId& by = look.state.log[last->ref].event.by;
  const Person* person = look.plan().find(by);
  const std::string name = person == nullptr || person->name.empty() ? by.text : person->name;
  return Clause{
      Saying{said("; {person} gave leave: {why}"), {{"person", name}, {"why", last->what.why}}}};
}

Finding of(const Look& look, const Rule& rule, const Stripped& strip) {
  Finding f = found(rule);
  f.element = strip.element;
  f.side = strip.side;
  f.from = strip.at;
  f.ref = strip.ref;
  f.facts = {{"permit", permit_words(look, strip)}};
  return f;
}

// Too little time, or strength not shown that nothing could show: then the set is the least.
void look_at_time(const Look& look, const Rule& rule, const Stripped& strip, Findings& out) {
  const Element& element = look.plan().elements[strip.element];
  const bool by_strength =
      element.strip_strength && strength_judged(look.state, strip.element, strip.at);
  if (!element.strip_after && by_strength) return;
  const auto set = last_set(look.state, strip.element);
  const Seconds until = element.strip_after ? strip.came + *element.strip_after : *set;
  if (strip.at >= until) return;
  Finding f = of(look, rule, strip);
  f.measured = amount(strip.at - strip.came, Measure::any_span);
  f.limit = amount(until - strip.came, Measure::any_span);
  f.source = element.strip_after
                 ? Source{.code = Source::Code::plan, .field = "strip_after_s"}
                 : Source{.code = Source::Code::rule,
                          .field = "initial_set_h",
                          .words = said(" from when the load was batched, by equivalent age (ASTM "
                                        "C1074), the late side")};
  f.sentence = said(
      "{element}: stripped {measured} after its last concrete came; not before {limit}{permit}");
  out.push_back(std::move(f));
}

void look_at_strength(const Look& look, const Rule& rule, const Stripped& strip, Findings& out) {
  const Element& element = look.plan().elements[strip.element];
  if (!element.strip_strength || !strength_judged(look.state, strip.element, strip.at)) return;
  const auto shown = strength_shown(look.state, strip.element, strip.at).greatest();
  if (shown && !under(*shown, *element.strip_strength)) return;
  Finding f = of(look, rule, strip);
  if (shown) f.measured = Amount{Measure::strength, in_megapascals(*shown)};
  f.limit = Amount{Measure::strength, in_megapascals(*element.strip_strength)};
  f.source = {.code = Source::Code::plan,
              .field = "strip_strength_mpa",
              .words = said("shown by temperatures read in the concrete, the place that hardened "
                            "least, and the mix's curve (maturity, ASTM C1074 from memory), or by "
                            "the lowest of its last load's oldest specimens (our own choice)")};
  f.sentence =
      shown ? said(
                  "{element}: stripped with {measured} shown of its last concrete; not before "
                  "{limit}{permit}")
            : said(
                  "{element}: stripped with no strength shown of its last concrete; not before "
                  "{limit}{permit}");
  out.push_back(std::move(f));
}

void look_strip_early(const Look& look, const Rule& rule, Findings& out) {
  for (const EventRef ref : look.state.strips) {
    const LogEntry& entry = look.state.log[ref];
    const auto& strip = std::get<event::Strip>(entry.event.what);
    const Element* element = look.plan().find(strip.element);
    if (element == nullptr) continue;
    const auto index = static_cast<std::size_t>(element - look.plan().elements.data());
    const auto came = last_concrete(look.state, index);
    if (!came) continue;
    const Stripped stripped{index, strip.side, ref, look.state.clock(entry.when), *came};
    look_at_time(look, rule, stripped, out);
    look_at_strength(look, rule, stripped, out);
  }
}

}  // namespace

extern const Rule kStripEarly{
    {"strip-early", said("Stripped too early"), Severity::stop, Cost::lasting,
     "concrete that does not carry itself yet, and the people under it",
     said("the plan's, by the engineer; without one the late side of set (our own choice: set is "
          "far "
          "from strength)"),
     "strip_after_s and strip_strength_mpa of the element; without either the late set of its last "
     "concrete",
     "plan, by the engineer",
     said("Keep clear; tell the engineer before anything is loaded or stripped further"),
     Harm::people},
    look_strip_early};

}  // namespace rb
