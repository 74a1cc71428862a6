// head-high: a row ran under more liquid head than the form bears.
#include "check/rule.h"
#include "pour/plan/verdicts.h"

namespace rb {

namespace {

void look_head_high(const Look& look, const Rule& rule, Findings& out) {
  for (const std::size_t r : look.runs_at_issue) {
    const RunReport& report = look.runs[r];
    const RunState& run = look.state.runs[r];
    const Element& element = look.plan().elements[run.element];
    if (judge_head(element, report.head) != HeadVerdict::over) continue;
    Finding f = found(rule);
    f.element = run.element;
    f.row = run.row;
    f.side = element.rows[run.row].side;
    f.from = run.from;
    f.to = look.run_end(run);
    f.measured = amount(report.head);
    f.limit = amount(*element.form_rating);
    f.source = {.code = Source::Code::plan, .field = "form_rating_kpa", .words = rule.card.source};
    f.ref = run.ref;
    f.sentence = said("{element} row {row} ran under a head of {measured}; the form bears {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kHeadHigh{
    {"head-high", said("Head over the form's rating"), Severity::stop, Cost::lasting,
     "a blown form: external vibration makes the concrete it reaches liquid again",
     said("full liquid head where form vibrators work (DIN 18218 and ACI 347 "
          "practice, from memory)"),
     "form_rating_kpa of the element", "the form designer",
     said("Rest the row now. Keep clear of the form, have it looked at by the "
          "form designer; run higher "
          "rows only"),
     Harm::people},
    look_head_high};

}  // namespace rb
