// rise-fast: the concrete rose faster than the form or the plan allows.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

void look_rise_fast(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    if (!report.rise_window || !report.rise_limit) continue;
    if (!over(*report.rise_window, *report.rise_limit)) continue;
    const auto limit = rise_limit_of(look.state, look.asof, report.element, look.lift(report));
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.from = report.placed_from;
    f.to = report.placed_to;
    f.measured = in_metres_per_hour(*report.rise_window);
    f.limit = in_metres_per_hour(*report.rise_limit);
    f.unit = "m/h";
    f.source = limit && limit->from == RiseLimit::From::plan
                   ? std::string{"plan: rise_limit"}
                   : fmt::format("{} against form_rating_kpa",
                                 trade::to_text(look.plan().pressure_method));
    f.ref = look.lift(report).ref;
    f.says = fmt::format("{} lift {}: rose {:.2f} m/h over the worst {:.0f} min; limit {:.2f} m/h",
                         look.element(report).id.text, report.lift, *f.measured,
                         in_seconds(look.plan().limits.rise_window.value) / 60, *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kRiseFast{
    {"rise-fast", Weight::stop, "form pressure over what the form bears: a blown form",
     "ACI 347, CIRIA 108 or DIN 18218, as the plan names",
     "the lower of rise_limit and the rate at which the method's pressure reaches "
     "form_rating_kpa, over rise_window_s (1800 s)",
     "the form designer",
     "Slow the placing or hold; keep clear of the form and look it over; tell the "
     "form designer"},
    look_rise_fast};

}  // namespace rb
