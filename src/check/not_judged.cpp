// What is not judged of a pour, and why: what the plan leaves unsaid and what nobody logged.
#include <algorithm>

#include "base/limits.h"
#include "check/check.h"
#include "pour/outlook/form.h"

namespace rb {

namespace {

bool began(const PourState& state) {
  return std::any_of(state.elements.begin(), state.elements.end(),
                     [](const ElementState& e) { return !e.lifts.empty(); });
}

// Concrete of an element that no discharge into it accounts for: none was logged, to it or to no
// named element.
bool loads_known(const PourState& state, std::size_t element) {
  return std::any_of(state.trucks.begin(), state.trucks.end(), [&](const TruckState& truck) {
    return truck.what && truck.may_be_in(element);
  });
}

void unlogged_loads(const PourState& state, std::vector<NotJudged>& gaps) {
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    if (state.elements[e].lifts.empty() || loads_known(state, e)) continue;
    gaps.push_back(
        {.what = "load",
         .element = e,
         .sentence = said("{element}: no truck's discharge is logged, so neither the age "
                          "nor the volume of its concrete is judged.")});
  }
}

void unsaid_starts(const PourState& state, std::vector<NotJudged>& gaps) {
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    for (const LiftState& lift : state.elements[e].lifts) {
      for (std::size_t bay = 0; bay < lift.bays.size(); ++bay) {
        if (!lift.start_missing(bay)) continue;
        gaps.push_back(
            {.what = "rise",
             .element = e,
             .bay = bay,
             .lift = lift.lift,
             .sentence = said("{element} lift {lift}: start of bay {bay} not tapped: its "
                              "rise may be higher than shown.")});
      }
    }
  }
}

void untold_speeds(const PourState& state, std::vector<NotJudged>& gaps) {
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const bool untold = std::any_of(state.runs.begin(), state.runs.end(), [&](const RunState& run) {
      return run.element == e && run.speed_untold();
    });
    if (!untold) continue;
    gaps.push_back(
        {.what = "speed",
         .element = e,
         .sentence = said("{element}: speed not logged for some runs: a second of them counts "
                          "whole, and whether their motors turned as fast as they should is not "
                          "judged.")});
  }
}

// What a motor works at is known of its type alone.
void unweighed_speeds(const PourState& state, std::vector<NotJudged>& gaps) {
  if (state.plan->motor_type) return;
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const bool told = std::any_of(state.runs.begin(), state.runs.end(), [&](const RunState& run) {
      return run.element == e && !run.speeds.empty();
    });
    if (!told) continue;
    gaps.push_back(
        {.what = "motor-type",
         .element = e,
         .sentence = said("{element}: the plan does not describe the motors, so a second of a "
                          "slow row counts whole.")});
  }
}

// Where insertions judge the work, whether vibrators enough were at it.
void untold_heads(const PourState& state, std::vector<NotJudged>& gaps) {
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    if (!by_insertions(state.plan->elements[e])) continue;
    const bool untold = std::any_of(
        state.inserts.begin(), state.inserts.end(),
        [&](const InsertState& insert) { return insert.element == e && !insert.what.heads; });
    if (!untold) continue;
    gaps.push_back({.what = "heads",
                    .element = e,
                    .sentence = said("{element}: some insertions tell no number of vibrators, so "
                                     "whether they kept up with the placing is not judged.")});
  }
}

}  // namespace

std::vector<NotJudged> not_judged(const Plan& plan) {
  std::vector<NotJudged> gaps;
  for (std::size_t e = 0; e < plan.elements.size(); ++e) {
    const Element& element = plan.elements[e];
    if (element.form_rating || element.kind == ElementKind::deck) continue;
    gaps.push_back({.what = "head",
                    .element = e,
                    .sentence = element.rise_limit
                                    ? said("{element}: the plan gives no form_rating_kpa, so the "
                                           "head on its running rows "
                                           "is "
                                           "held to nothing, and its rise only to a rise_limit the "
                                           "plan gives (it does).")
                                    : said("{element}: the plan gives no form_rating_kpa, so the "
                                           "head on its running rows "
                                           "is "
                                           "held to nothing, and its rise only to a rise_limit the "
                                           "plan gives (it gives "
                                           "none).")});
  }
  if (!plan.power.empty() && !plan.motor_type) {
    gaps.push_back({.what = "power",
                    .sentence = said("the plan does not describe the motors, so no inverter's load "
                                     "and no cord is judged.")});
  }
  if (!plan.motor_type) return gaps;
  for (const Inverter& inverter : plan.power) {
    if (inverter.cable || inverter.trunk) continue;
    gaps.push_back({.what = "cord",
                    .sentence = said("inverter {inverter}: the plan gives neither its trunk nor "
                                     "the cord to a motor, so no voltage drop is judged."),
                    .inverter = inverter.id});
  }
  return gaps;
}

std::vector<NotJudged> not_judged(const PourState& state) {
  std::vector<NotJudged> gaps = not_judged(*state.plan);
  if (!began(state)) return gaps;
  if (state.ready.empty()) {
    gaps.push_back({.what = "ready",
                    .sentence = said("no item of the walk-down is logged, so whether form and crew "
                                     "were ready is not judged.")});
  }
  unlogged_loads(state, gaps);
  unsaid_starts(state, gaps);
  untold_speeds(state, gaps);
  unweighed_speeds(state, gaps);
  untold_heads(state, gaps);
  return gaps;
}

}  // namespace rb
