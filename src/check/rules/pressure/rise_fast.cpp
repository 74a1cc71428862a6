// rise-fast: the concrete rose faster than the form or the plan allows.
#include <algorithm>

#include "check/rule.h"
#include "pour/plan/verdicts.h"
#include "trade/pressure/method_name.h"
#include "trade/pressure/rise.h"

namespace rb {

namespace {

Source source_of(const Look& look, const std::optional<RiseLimit>& limit) {
  if (limit && limit->from == RiseLimit::From::plan) {
    return {.code = Source::Code::plan, .field = "rise_limit"};
  }
  return {.code = Source::Code::rule,
          .field = "form_rating_kpa",
          .words = said("{method} against the form's rating"),
          .facts = {{"method", std::string{trade::cited(look.plan().pressure_method)}}}};
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
  if (!limit || judge_rise(worst, limit->rate) != RiseVerdict::fast) return;
  Finding f = found(rule);
  f.element = e;
  f.from = first;
  f.to = last;
  f.measured = amount(worst);
  f.limit = amount(limit->rate);
  f.source = source_of(look, limit);
  f.sentence = said(
      "{element}: rose {measured} over the worst {window} before any lift was begun; limit "
      "{limit}");
  f.facts = {{"window", amount(window, Measure::age)}};
  out.push_back(std::move(f));
}

void look_rise_fast(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    look_before_lifts(look, rule, e, out);
  }
  for (const LiftReport& report : look.lifts) {
    // As drawn a bay without its start rose too slowly rather than too fast: over is over.
    const auto rose = std::max(report.rise_window, report.rise_at_least);
    if (judge_rise(rose, report.rise_limit) != RiseVerdict::fast) continue;
    const auto limit = rise_limit_of(look.state, look.asof, report.element, look.lift(report));
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.from = report.placed_from;
    f.to = report.placed_to;
    f.measured = amount(*rose);
    f.limit = amount(*report.rise_limit);
    f.source = source_of(look, limit);
    f.ref = look.lift(report).ref;
    f.sentence =
        said("{element} lift {lift}: rose {measured} over the worst {window}; limit {limit}");
    f.facts = {{"window", amount(look.plan().limits.rise_window.value, Measure::age)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kRiseFast{
    {"rise-fast", said("Rising too fast"), Severity::stop, Cost::perhaps,
     "form pressure over what the form bears: a blown form",
     said("ACI 347, CIRIA 108 or DIN 18218:2010 (from memory), as the plan names"),
     "the lower of rise_limit and the rate at which the method's pressure reaches "
     "form_rating_kpa, over rise_window_s (1800 s)",
     "the form designer",
     said("Slow the placing or hold; keep clear of the form and look it over; tell the "
          "form designer"),
     Harm::people},
    look_rise_fast};

}  // namespace rb
