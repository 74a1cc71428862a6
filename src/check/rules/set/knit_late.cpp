// knit-late: a lift's top set before the next lift was knitted to it, or a bay before the one
// beside it came.
#include <algorithm>

#include "check/beside.h"
#include "check/rule.h"

namespace rb {

namespace {

// The top of an element is reached within this.
constexpr Length kFull = millimetres(10);

Source set_source(const Look& look, std::size_t element, Seconds came) {
  if (set_measured(look.state, element, came)) {
    return {.code = Source::Code::measured,
            .words = said(
                "measured: penetration readings (ASTM C403), the early side of "
                "their range, from when the load was batched, by equivalent age (ASTM C1074)")};
  }
  if (look.plan().limits.plastic_share.value < 1) {
    return {.code = Source::Code::plan,
            .field = "initial_set_h",
            .words = said(
                " x plastic_share from when the load was batched, by equivalent age (ASTM C1074), "
                "the early side: past its workability it is taken as set")};
  }
  return {.code = Source::Code::plan,
          .field = "initial_set_h",
          .words = said(
              " from when the load was batched, by equivalent age (ASTM C1074), the early side")};
}

struct JointSeen {
  Seconds came{}, sets{};
  std::optional<Seconds> knits;
};

Knitting knitting_of(const trade::Face& face, std::size_t bay, const JointQuestion& question,
                     LiftLook* known) {
  const auto ask = [&](const trade::Face& of) {
    return knitting(of, bay, question.z, question.covered, question.insert);
  };
  if (known == nullptr) return ask(face);
  auto& kept = known->joints[bay];
  if (kept && kept->question == question) return kept->knitting;
  // Knitted before it set: all that ran until then is in the part the lift's look depends on.
  const Knitting knit = ask(known->part);
  kept.reset();
  if (knit.when && *knit.when <= question.sets) {
    kept = LiftLook::KnownJoint{question, knit};
    return knit;
  }
  return ask(face);
}

// None: there is no joint.
std::optional<JointSeen> joint_of(const Look& look, std::size_t element, std::size_t bay, Length z,
                                  LiftLook* known) {
  const trade::TopCurve& top = look.state.elements[element].tops[bay];
  const auto came = top.reached(z);
  const auto covered = top.covered(z);
  if (!came || !covered) return std::nullopt;
  const JointQuestion question{z, *came, *covered, look.faces[element].sets_at(*came),
                               first_deep_insert(look.state, element, bay, z, *covered)};
  const Knitting knit = knitting_of(look.faces[element], bay, question, known);
  if (!knit.spots) return std::nullopt;
  return JointSeen{question.came, question.sets, knit.when};
}

// Whether it was knitted in time, which nothing later can change.
bool judge(const Look& look, const Rule& rule, const LiftReport& report, LiftLook* known,
           std::size_t bay, Findings& out) {
  const LiftState& lift = look.lift(report);
  const auto joint = joint_of(look, report.element, bay, lift.top[bay], known);
  if (!joint) return false;
  if (joint->knits && *joint->knits < joint->sets) return true;
  if (!joint->knits && look.asof.live && look.asof.at < joint->sets) return false;  // time yet
  if (joint_decided(look.state, report.element, report.lift, bay)) return false;
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.bay = bay;
  f.from = joint->came;
  f.to = joint->knits;
  if (!f.to && look.asof.live) f.to = look.asof.at;  // it is still so
  if (joint->knits) f.measured = amount(*joint->knits - joint->came, Measure::long_span);
  f.limit = amount(joint->sets - joint->came, Measure::long_span);
  f.source = set_source(look, report.element, joint->came);
  f.ref = lift.ref;
  f.sentence = joint->knits
                   ? said(
                         "{element} lift {lift} bay {bay}: knitted {measured} after it came; "
                         "it set after {limit}")
                   : said(
                         "{element} lift {lift} bay {bay}: never knitted to the lift above; "
                         "it set {limit} after it came");
  out.push_back(std::move(f));
  return false;
}

// A top that set with no concrete of the next lift on it, though a lift is planned there and the
// pour goes on.
void judge_left(const Look& look, const Rule& rule, const LiftReport& report, std::size_t bay,
                Findings& out) {
  const Element& element = look.element(report);
  if (look.state.closed || element.one_layer() || element.lifts.empty()) return;
  const LiftState& lift = look.lift(report);
  const Length z = lift.top[bay];
  const trade::TopCurve& top = look.state.elements[report.element].tops[bay];
  const auto came = top.reached(z);
  if (z >= element.lifts.back() - kFull || !came || top.covered(z)) return;
  const Seconds sets = look.faces[report.element].sets_at(*came);
  if (sets > look.asof.at || joint_decided(look.state, report.element, report.lift, bay)) return;
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.bay = bay;
  f.from = *came;
  f.to = look.asof.live ? look.asof.at : sets;  // it is still so
  f.limit = amount(sets - *came, Measure::long_span);
  f.source = set_source(look, report.element, *came);
  f.ref = lift.ref;
  f.sentence = said(
      "{element} lift {lift} bay {bay}: no lift came on it before it set, {limit} after it came");
  out.push_back(std::move(f));
}

// A lift's concrete that came against the bay beside it when that had set, at the middle of what
// it gained there.
void judge_beside(const Look& look, const Rule& rule, const LiftReport& report, std::size_t bay,
                  std::size_t beside, Findings& out) {
  const auto joint = came_beside(look, report, bay, beside);
  if (!joint) return;
  const auto& [came, stood] = *joint;
  const Seconds sets = look.faces[report.element].sets_at(stood);
  const std::size_t left = std::min(bay, beside);
  if (came < sets || joint_decided(look.state, report.element, report.lift, left)) return;
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.bay = bay;
  f.from = came;
  f.to = look.asof.live && !look.state.closed ? look.asof.at : came;  // it is still so
  f.measured = amount(came - stood, Measure::long_span);
  f.limit = amount(sets - stood, Measure::long_span);
  f.source = set_source(look, report.element, stood);
  f.ref = look.lift(report).ref;
  f.sentence = said(
      "{element} lift {lift} bay {bay}: came {measured} after bay {beside}, which set after "
      "{limit}");
  f.facts = {{"beside", counted(beside + 1)}};
  out.push_back(std::move(f));
}

// A lift's concrete that came upon another element's when that had set.
void judge_met(const Look& look, const Rule& rule, const LiftReport& report, Findings& out) {
  for (const MetWorst& worst : came_upon(look, report)) {
    const Met& met = worst.by_set;
    if (met.came < met.set || joint_decided(look.state, report.element, report.lift, met.bay)) {
      continue;
    }
    Finding f = found(rule);
    f.element = report.element;
    f.lift = report.lift;
    f.bay = met.bay;
    f.from = met.came;
    f.to = look.asof.live && !look.state.closed ? look.asof.at : met.came;  // it is still so
    f.measured = amount(met.came - met.stood, Measure::long_span);
    f.limit = amount(met.set - met.stood, Measure::long_span);
    f.source = set_source(look, met.element, met.stood);
    f.ref = look.lift(report).ref;
    f.sentence = said(
        "{element} lift {lift} bay {bay}: came {measured} after {other} beside it, which set after "
        "{limit}");
    f.facts = {{"other", look.plan().elements[met.element].id.text}};
    out.push_back(std::move(f));
  }
}

// A side that set with no concrete against it, though the pour goes on.
void judge_open(const Look& look, const Rule& rule, std::size_t element, Findings& out) {
  for (const OpenSide& side : open_sides(look, element)) {
    if (side.sets > look.asof.at) continue;
    Finding f = found(rule);
    f.element = element;
    f.lift = side.lift;
    f.bay = side.bay;
    f.from = side.came;
    f.to = look.asof.live ? look.asof.at : side.sets;  // it is still so
    f.limit = amount(side.sets - side.came, Measure::long_span);
    f.source = set_source(look, element, side.came);
    f.ref = side.ref;
    if (side.beside) {
      f.sentence = said(
          "{element} lift {lift} bay {bay}: no concrete came against its side to bay {beside} "
          "before it set, {limit} after it came");
      f.facts = {{"beside", counted(*side.beside + 1)}};
    } else {
      f.sentence = said(
          "{element} lift {lift} bay {bay}: no concrete came against its side to {other} before it "
          "set, {limit} after it came");
      f.facts = {{"other", look.plan().elements[*side.other].id.text}};
    }
    out.push_back(std::move(f));
  }
}

void judge_bays(const Look& look, const Rule& rule, const LiftReport& report, Findings& out) {
  const std::size_t bays = look.lift(report).top.size();
  for (std::size_t bay = 0; bay < bays; ++bay) {
    if (bay > 0) judge_beside(look, rule, report, bay, bay - 1, out);
    if (bay + 1 < bays) judge_beside(look, rule, report, bay, bay + 1, out);
  }
}

void look_knit_late(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t i = 0; i < look.lifts.size(); ++i) {
    const LiftReport& report = look.lifts[i];
    const LiftState& lift = look.lift(report);
    LiftLook* known = look.lift_looks[i];
    if (known != nullptr && known->knitted) continue;
    const std::size_t before = out.size();
    judge_bays(look, rule, report, out);
    judge_met(look, rule, report, out);
    bool knitted = lift.next_start && out.size() == before;
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      if (lift.top[bay] <= lift.bottom[bay]) continue;
      judge_left(look, rule, report, bay, out);
      if (lift.next_start) knitted = judge(look, rule, report, known, bay, out) && knitted;
    }
    if (known != nullptr && knitted) known->knitted = look.state.last;
  }
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) judge_open(look, rule, e, out);
}

}  // namespace

extern const Rule kKnitLate{
    {"knit-late", said("Lifts knitted too late"), Severity::stop, Cost::lasting,
     "a cold joint: the lift below set before the next was worked into it",
     said("initial set of ASTM C403 by equivalent age (ASTM C1074)"),
     "covered and shaken before the plan's initial_set_h at the concrete's temperature",
     "plan, by the mix's test",
     said("Stop and ask the engineer how the joint is to be treated; mark it to be inspected"),
     Harm::work, Asks::joint_decision},
    look_knit_late};

}  // namespace rb
