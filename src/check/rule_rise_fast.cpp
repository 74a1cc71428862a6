// rise-fast: the concrete rose faster than the form or the plan allows.
#include <fmt/format.h>

#include <algorithm>

#include "check/rule.h"
#include "trade/rise.h"

namespace rb {

namespace {

std::string source_of(const Look& look, const std::optional<RiseLimit>& limit) {
  return limit && limit->from == RiseLimit::From::plan
             ? std::string{"plan: rise_limit"}
             : fmt::format("{} against form_rating_kpa",
                           trade::to_text(look.plan().pressure_method));
}

// Concrete that was read before the first lift was begun, or where none ever was.
void look_before_lifts(const Look& look, const Rule& rule, std::size_t e, Findings& out) {
  const ElementState& there = look.state.elements[e];
  const Seconds window = look.plan().limits.rise_window.value;
  std::optional<Seconds> first, last;
  Velocity worst;
  for (const trade::TopCurve& top : there.tops) {
    std::vector<Seconds> read;
    for (const trade::SurfacePoint& point : top.points()) {
      if (!there.lifts.empty() && point.at >= there.lifts.front().started) break;
      if (point.height > Length{}) read.push_back(point.at);
    }
    if (read.empty()) continue;
    worst = std::max(worst, trade::worst_rise(top, window, read.front(), read.back()));
    first = first ? std::min(*first, read.front()) : read.front();
    last = last ? std::max(*last, read.back()) : read.back();
  }
  if (!first) return;
  const auto limit = rise_limit(look.state, e, *first);
  if (!limit || !over(worst, limit->rate)) return;
  Finding f = found(rule);
  f.element = e;
  f.from = first;
  f.to = last;
  f.measured = in_metres_per_hour(worst);
  f.limit = in_metres_per_hour(limit->rate);
  f.unit = "m/h";
  f.source = source_of(look, limit);
  f.says = fmt::format(
      "{}: rose {:.2f} m/h over the worst {:.0f} min before any lift was begun; limit {:.2f} m/h",
      look.plan().elements[e].id.text, *f.measured, in_seconds(window) / 60, *f.limit);
  out.push_back(std::move(f));
}

void look_rise_fast(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    look_before_lifts(look, rule, e, out);
  }
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
    f.source = source_of(look, limit);
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
     "ACI 347, CIRIA 108 or DIN 18218:2010 (from memory), as the plan names",
     "the lower of rise_limit and the rate at which the method's pressure reaches "
     "form_rating_kpa, over rise_window_s (1800 s)",
     "the form designer",
     "Slow the placing or hold; keep clear of the form and look it over; tell the "
     "form designer"},
    look_rise_fast};

}  // namespace rb
