// form-short: no rate of rise keeps the form under its rating.
#include "check/rule.h"
#include "pour/plan/verdicts.h"
#include "trade/pressure/method_name.h"
#include "trade/pressure/pressure.h"

namespace rb {

namespace {

// The first lift from which no rate helps, element by element: one cause, told once.
void look_form_short(const Look& look, const Rule& rule, Findings& out) {
  std::vector<bool> told(look.state.elements.size(), false);
  for (const LiftReport& report : look.lifts) {
    if (told[report.element]) continue;
    if (judge_rise(report.rise_window, report.rise_limit) != RiseVerdict::no_rate) continue;
    const Element& element = look.element(report);
    if (!element.form_rating) continue;
    told[report.element] = true;
    const Seconds at = std::max(report.placed_from, report.placed_to);
    const trade::PressureCase c = pressure_case(look.state, report.element, at);
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.from = report.placed_from;
    // It is so as long as the pour is open: it stays under attention.
    f.to = look.asof.live && !look.state.closed ? look.asof.at : report.placed_to;
    f.measured = amount(trade::full_liquid_head(c.unit_weight, c.pour_height));
    f.limit = amount(*element.form_rating);
    f.source = {.code = Source::Code::rule,
                .field = "form_rating_kpa",
                .words = said("{method} against the form's rating"),
                .facts = {{"method", std::string{trade::cited(look.plan().pressure_method)}}}};
    f.ref = look.lift(report).ref;
    f.sentence = said(
        "{element} lift {lift}: no rate of rise holds the form under its {limit}; full of liquid "
        "concrete ({slump} slump) it bears {measured}");
    f.facts = {{"slump", Amount{Measure::small_length, in_metres(c.slump)}}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kFormShort{
    {"form-short", said("Form too weak"), Severity::stop, Cost::lasting,
     "form pressure over what the form bears at any rate: a blown form",
     said("ACI 347, CIRIA 108 or DIN 18218:2010 (from memory), as the plan names"),
     "a rise limit of 0: the method passes form_rating_kpa at every rate, or does not hold and the "
     "full liquid head does",
     "the form designer",
     said("Stop placing and keep clear of the form: no slower rate helps; the form designer "
          "decides whether and how the pour goes on"),
     Harm::people},
    look_form_short};

}  // namespace rb
