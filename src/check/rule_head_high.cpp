// head-high: a row ran under more liquid head than the form bears.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

void look_head_high(const Look& look, const Rule& rule, Findings& out) {
  for (const std::size_t r : look.runs_at_issue) {
    const RunReport& report = look.runs[r];
    const RunState& run = look.state.runs[r];
    const Element& element = look.plan().elements[run.element];
    if (!element.form_rating || !over(report.head, *element.form_rating)) continue;
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = element.rows[run.row].side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.measured = in_kilopascals(report.head);
    f.limit = in_kilopascals(*element.form_rating);
    f.unit = "kPa";
    f.source = "plan: form_rating_kpa; " + std::string{rule.card.source};
    f.ref = run.ref;
    f.says = fmt::format("{} row {} ran under a head of {:.1f} kPa; the form bears {:.1f} kPa",
                         element.id.text, element.rows[run.row].id.text, *f.measured, *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kHeadHigh{
    {"head-high", Weight::stop,
     "a blown form: external vibration makes the concrete it reaches liquid again",
     "full liquid head where form vibrators work (DIN 18218 and ACI 347 practice, from memory; a "
     "published glossary says the same)",
     "form_rating_kpa of the element", "the form designer",
     "Rest the row now. Keep clear of the form, have it looked at by the form designer; run higher "
     "rows only"},
    look_head_high};

}  // namespace rb
