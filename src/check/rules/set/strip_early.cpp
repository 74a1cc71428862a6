// strip-early: a form was stripped sooner than the plan allows, before the strength it asks for was
// shown, or before its concrete has set.
#include "check/face/stripped.h"
#include "check/rule.h"

namespace rb {

namespace {

// Leave given by name clears nothing; it is told beside. Nothing where none was given.
FactValue permit_words(const Look& look, const StripVerdict& verdict) {
  if (!verdict.permit) return std::string{};
  return Clause{Saying{said("; {person} gave leave: {why}"),
                       {{"person", leave_by(look, verdict)},
                        {"why", look.state.permits[*verdict.permit].what.why}}}};
}

Finding of(const Look& look, const Rule& rule, const Stripped& strip) {
  Finding f = found(rule);
  f.element = strip.element;
  f.side = strip.side;
  f.from = strip.at;
  f.ref = strip.ref;
  f.facts = {{"permit", permit_words(look, strip.verdict)}};
  return f;
}

Finding too_soon(const Look& look, const Rule& rule, const Stripped& strip) {
  const StripTooSoon& soon = *strip.verdict.soon;
  Finding f = of(look, rule, strip);
  f.measured = amount(soon.waited, Measure::any_span);
  f.limit = amount(soon.least, Measure::any_span);
  f.source = soon.planned
                 ? Source{.code = Source::Code::plan, .field = "strip_after_s"}
                 : Source{.code = Source::Code::rule,
                          .field = "initial_set_h",
                          .words = said(" from when the load was batched, by equivalent age (ASTM "
                                        "C1074), the late side")};
  f.sentence = said(
      "{element}: stripped {measured} after its last concrete came; not before {limit}{permit}");
  return f;
}

Finding too_weak(const Look& look, const Rule& rule, const Stripped& strip) {
  const StripTooWeak& weak = *strip.verdict.weak;
  Finding f = of(look, rule, strip);
  if (weak.shown) f.measured = Amount{Measure::strength, in_megapascals(*weak.shown)};
  f.limit = Amount{Measure::strength, in_megapascals(weak.least)};
  f.source = {.code = Source::Code::plan,
              .field = "strip_strength_mpa",
              .words = said("shown by temperatures read in the concrete, the place that hardened "
                            "least, and the mix's curve (maturity, ASTM C1074 from memory), or by "
                            "the lowest of its last load's oldest specimens; the less of the two "
                            "where both are known (our own choice)")};
  f.sentence = weak.shown
                   ? said(
                         "{element}: stripped with {measured} shown of its last concrete; not "
                         "before {limit}{permit}")
                   : said(
                         "{element}: stripped with no strength shown of its last concrete; not "
                         "before {limit}{permit}");
  return f;
}

void look_strip_early(const Look& look, const Rule& rule, Findings& out) {
  for (const Stripped& strip : stripped(look)) {
    if (strip.verdict.soon) out.push_back(too_soon(look, rule, strip));
    if (strip.verdict.weak) out.push_back(too_weak(look, rule, strip));
  }
}

}  // namespace

extern const Rule kStripEarly{
    {"strip-early", said("Stripped too early"), Severity::stop, Cost::lasting,
     "concrete that does not carry itself yet, and the people under it",
     said("the plan's, by the engineer; without one the late side of set (our own choice: set is "
          "far "
          "from strength)"),
     "strip_after_s and strip_strength_mpa of the element, the strength by maturity or by "
     "specimens, the less of the two where both are known; without either limit the late set of "
     "its last concrete",
     "plan, by the engineer",
     said("Keep clear; tell the engineer before anything is loaded or stripped further"),
     Harm::people},
    look_strip_early};

}  // namespace rb
