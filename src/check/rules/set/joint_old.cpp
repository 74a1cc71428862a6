// joint-old: the next concrete came on a layer, or beside a bay, later than the contract allows.
#include <algorithm>

#include "check/beside.h"
#include "check/rule.h"
#include "pour/outlook/knit.h"

namespace rb {

namespace {

struct Old {
  Seconds age{};
  Seconds came{};
  std::size_t bay = 0;
  std::optional<std::size_t> beside{};
  std::optional<std::size_t> met{};  // another element
};

// Until the next concrete came on a lift's top in a bay; while the pour goes on, until now.
std::optional<Old> on_top(const Look& look, const LiftReport& report, std::size_t bay) {
  const Element& element = look.element(report);
  const Length z = look.lift(report).top[bay];
  if (z <= look.lift(report).bottom[bay] || element.one_layer()) return std::nullopt;
  const trade::TopCurve& top = look.state.elements[report.element].tops[bay];
  const auto came = top.reached(z);
  auto next = top.covered(z);
  const bool more = !element.lifts.empty() && z < element.lifts.back() - millimetres(10);
  if (!next && more && look.asof.live && !look.state.closed) next = look.asof.at;
  if (!came || !next) return std::nullopt;
  return Old{*next - *came, *came, bay};
}

std::optional<Old> beside(const Look& look, const LiftReport& report, std::size_t bay,
                          std::size_t other) {
  const auto joint = came_beside(look, report, bay, other);
  if (!joint) return std::nullopt;
  return Old{joint->came - joint->stood, joint->stood, bay, other};
}

void look_joint_old(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    const auto& most = look.element(report).joint_age_max;
    if (!most) continue;
    const std::size_t bays = look.lift(report).top.size();
    std::optional<Old> worst;
    const auto take = [&](const std::optional<Old>& old, std::size_t left) {
      if (!old || !over(old->age, *most) || (worst && worst->age >= old->age)) return;
      if (joint_decided(look.state, report.element, report.lift, left)) return;
      worst = old;
    };
    for (std::size_t bay = 0; bay < bays; ++bay) {
      take(on_top(look, report, bay), bay);
      if (bay > 0) take(beside(look, report, bay, bay - 1), bay - 1);
      if (bay + 1 < bays) take(beside(look, report, bay, bay + 1), bay);
    }
    for (const MetWorst& met : came_upon(look, report)) {
      take(Old{met.by_age.came - met.by_age.stood,
               met.by_age.stood,
               met.by_age.bay,
               {},
               met.by_age.element},
           met.by_age.bay);
    }
    if (!worst) continue;
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.bay = worst->bay;
    f.from = worst->came;
    f.to = worst->came + worst->age;
    f.measured = amount(worst->age, Measure::any_span);
    f.limit = amount(*most, Measure::any_span);
    f.source = {.code = Source::Code::plan, .field = "joint_age_max_s"};
    f.ref = look.lift(report).ref;
    f.sentence =
        worst->met ? said(
                         "{element} lift {lift} bay {bay}: came {measured} after {other} beside "
                         "it; the contract allows {limit}")
        : worst->beside
            ? said(
                  "{element} lift {lift} bay {bay}: came {measured} after bay {beside}; the "
                  "contract allows {limit}")
            : said(
                  "{element} lift {lift} bay {bay}: {measured} until the next concrete on it; the "
                  "contract allows {limit}");
    if (worst->met) f.facts = {{"other", look.plan().elements[*worst->met].id.text}};
    if (worst->beside) f.facts = {{"beside", counted(*worst->beside + 1)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kJointOld{
    {"joint-old", said("Joint older than allowed"), Severity::mend, Cost::lasting,
     "a joint the contract calls cold, whether it has set or not",
     said("the contract's own, 30 or 45 min are common (common practice, no source)"),
     "joint_age_max_s of the element; none unless the plan gives it", "plan, by the contract",
     said("Ask the engineer how the joint is to be treated; log the decision"), Harm::work,
     Asks::joint_decision},
    look_joint_old};

}  // namespace rb
