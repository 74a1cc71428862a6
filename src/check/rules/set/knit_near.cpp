// knit-near: a lift's top is about to set and the next lift has not been worked into it.
#include <algorithm>
#include <map>

#include "check/beside.h"
#include "check/rule.h"
#include "pour/outlook/knit.h"

namespace rb {

namespace {

struct Near {
  std::size_t bay = 0;
  const Joint* joint = nullptr;
  double bays = 0;
};

// By lift, the bay that sets first.
std::map<int, Near> near_joints(const PourState& state, std::size_t element,
                                const std::vector<KnitClock>& clocks, Seconds at) {
  std::map<int, Near> lifts;
  const Seconds margin = state.plan->limits.knit_margin.value;
  for (const KnitClock& clock : clocks) {
    const Joint* joint = clock.pending(at);
    // Once it has set the joint is knit-late's.
    if (joint == nullptr || joint->sets <= at || joint->early - at > margin) continue;
    if (joint_decided(state, element, joint->lift, clock.bay)) continue;
    Near& near = lifts[joint->lift];
    ++near.bays;
    if (near.joint != nullptr && near.joint->early <= joint->early) continue;
    near.joint = joint;
    near.bay = clock.bay;
  }
  return lifts;
}

// No concrete that came since sets before that.
Seconds first_set_since(const std::vector<trade::SetStep>& sets, Seconds since) {
  Seconds first = trade::sets_at(sets, since);
  for (const trade::SetStep& step : sets) {
    if (step.from > since) first = std::min(first, step.sets(step.from));
  }
  return first;
}

// Whether a joint of an element can be near its set at all: most of the time none is, and the
// clocks of a great wall take long to work out.
bool may_be_near(const Look& look, std::size_t e) {
  const ElementState& there = look.state.elements[e];
  const Seconds margin = look.plan().limits.knit_margin.value;
  for (std::size_t bay = 0; bay < there.tops.size(); ++bay) {
    // The surface of a bay came with the last lift that rose in it, the joint below with the one
    // before.
    int grown = 0;
    for (auto lift = there.lifts.rbegin(); lift != there.lifts.rend() && grown < 2; ++lift) {
      if (lift->top[bay] <= lift->bottom[bay]) continue;
      ++grown;
      if (first_set_since(look.faces[e].sets, lift->started) <= look.asof.at + margin) return true;
    }
    if (grown == 0 && there.tops[bay].standing() > Length{}) return true;  // before any lift
  }
  return false;
}

// Of an element's sides that concrete is still to come against the one that sets next.
void look_at_sides(const Look& look, const Rule& rule, std::size_t element, Findings& out) {
  const auto& margin = look.plan().limits.knit_margin;
  std::optional<OpenSide> next;
  for (const OpenSide& side : open_sides(look, element)) {
    if (side.sets <= look.asof.at || side.sets - look.asof.at > margin.value) continue;
    if (!next || side.sets < next->sets) next = side;
  }
  if (!next) return;
  Finding f = found(rule);
  f.element = element;
  f.lift = next->lift;
  f.bay = next->bay;
  f.from = next->sets - margin.value;
  f.to = next->sets;
  f.measured = amount(next->sets - look.asof.at, Measure::any_span);
  f.limit = amount(margin.value, Measure::any_span);
  f.source = limit_source(rule, margin.from);
  f.ref = next->ref;
  if (next->beside) {
    f.sentence = said(
        "{element} lift {lift} bay {bay}: its side to bay {beside} sets in {measured}; concrete "
        "must come against it before");
    f.facts = {{"beside", counted(*next->beside + 1)}};
  } else {
    f.sentence = said(
        "{element} lift {lift} bay {bay}: its side to {other} sets in {measured}; concrete must "
        "come against it before");
    f.facts = {{"other", look.plan().elements[*next->other].id.text}};
  }
  out.push_back(std::move(f));
}

void look_knit_near(const Look& look, const Rule& rule, Findings& out) {
  if (!look.asof.live || look.state.closed) return;
  const auto& margin = look.plan().limits.knit_margin;
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    if (look.state.elements[e].lifts.empty()) continue;
    look_at_sides(look, rule, e, out);
    if (!may_be_near(look, e)) continue;
    const auto clocks = knit_clocks(look.state, e, look.asof.at);
    for (const auto& [lift, near] : near_joints(look.state, e, clocks, look.asof.at)) {
      Finding f = found(rule);
      f.element = e;
      f.lift = lift;
      f.bay = near.bay;
      f.from = near.joint->early - margin.value;
      f.to = near.joint->early;
      f.measured = amount(std::max(Seconds{}, near.joint->early - look.asof.at), Measure::any_span);
      f.limit = amount(margin.value, Measure::any_span);
      f.source = limit_source(rule, margin.from);
      f.sentence = said(
          "{element} lift {lift} bay {bay}: its top sets in {measured}; the lift above must be "
          "worked into it before (bays that near it: {bays})");
      f.facts = {{"bays", count(near.bays)}};
      out.push_back(std::move(f));
    }
  }
}

}  // namespace

extern const Rule kKnitNear{
    {"knit-near", said("Joint about to set"), Severity::stop, Cost::lasting,
     "a cold joint: the lift below sets before the next is worked into it",
     said("initial set of ASTM C403 by equivalent age (ASTM C1074); the margin of {900 s} is our "
          "own choice"),
     "900 s before a joint sets, as early as it may", "nobody",
     said("Cover it and vibrate through the joint now; if that cannot be done, rest the rows and "
          "call the engineer before it sets"),
     Harm::work, Asks::joint_decision},
    look_knit_near};

}  // namespace rb
