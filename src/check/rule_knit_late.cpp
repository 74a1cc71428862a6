// knit-late: a lift's top set before the next lift was knitted to it.
#include <fmt/format.h>

#include <algorithm>

#include "check/rule.h"

namespace rb {

namespace {

struct Joint {
  Seconds came{};                ///< when the spot's concrete came
  Seconds sets{};                ///< when it set
  std::optional<Seconds> knits;  ///< when it was knitted, if it was
};

// The moments rows ran that reach a height, by where along the element they reach.
struct Reaching {
  Length from, to;  ///< along x
  std::vector<trade::Interval> ran;
};

std::vector<Reaching> rows_reaching(const Look& look, std::size_t element, Length z) {
  std::vector<Reaching> reaching;
  for (const auto& side : look.faces[element].sides) {
    for (const trade::Shaker& shaker : side) {
      if (!shaker.reaches_z(z) || shaker.running.empty()) continue;
      reaching.push_back({shaker.x - shaker.reach_x, shaker.x + shaker.reach_x, shaker.running});
    }
  }
  return reaching;
}

std::optional<Seconds> first_running(const std::vector<trade::Interval>& ran, Seconds from) {
  for (const trade::Interval& span : ran) {
    if (span.to > from) return std::max(span.from, from);
  }
  return std::nullopt;
}

std::optional<Seconds> first_insert(const Look& look, std::size_t element, std::size_t bay,
                                    Seconds from) {
  for (const InsertState& insert : look.state.inserts) {  // in order of time
    if (insert.element != element || insert.at < from) continue;
    if (insert.bay && *insert.bay != bay) continue;
    if (insert.what.depth_below >= look.plan().limits.knit_depth.value) return insert.at;
  }
  return std::nullopt;
}

void keep_earlier(std::optional<Seconds>& best, std::optional<Seconds> other) {
  if (other && (!best || *other < *best)) best = other;
}

bool open_at(const Element& element, Length x, Length z) {
  return std::any_of(element.openings.begin(), element.openings.end(), [&](const Patch& p) {
    return trade::holds_x(p, x) && z >= p.z && z <= p.z + p.h;
  });
}

// The joint of one bay at the top of a lift, as its worst spot along the bay has it.
std::optional<Joint> worst_joint(const Look& look, std::size_t element, std::size_t bay, Length z) {
  const Element& planned = look.plan().elements[element];
  const trade::TopCurve& top = look.state.elements[element].tops[bay];
  const auto came = top.reached(z);
  const auto covered = top.covered(z);
  if (!came || !covered) return std::nullopt;
  const auto insert = first_insert(look, element, bay, *covered);
  const auto reaching = rows_reaching(look, element, z);
  const auto cells = static_cast<std::size_t>(std::ceil(planned.length / trade::kDoseCell - 1e-6));
  std::optional<Joint> worst;
  for (std::size_t i = 0; i < cells; ++i) {
    const Length x = trade::kDoseCell * (static_cast<double>(i) + 0.5);
    if (planned.bay_at(x) != bay || open_at(planned, x, z)) continue;
    Joint joint{*came, sets_at(look.state, element, *came), insert};
    for (const Reaching& row : reaching) {
      if (x >= row.from - trade::kSamePlace && x <= row.to + trade::kSamePlace) {
        keep_earlier(joint.knits, first_running(row.ran, *covered));
      }
    }
    const bool worse = !worst || !joint.knits || (worst->knits && *joint.knits > *worst->knits);
    if (worse) worst = joint;
    if (!joint.knits) break;
  }
  return worst;
}

void judge(const Look& look, const Rule& rule, const LiftReport& report, std::size_t bay,
           Findings& out) {
  const Element& element = look.element(report);
  const LiftState& lift = look.lift(report);
  const auto joint = worst_joint(look, report.element, bay, lift.top[bay]);
  if (!joint) return;
  if (joint->knits && *joint->knits < joint->sets) return;
  if (!joint->knits && look.asof.live && look.asof.at < joint->sets) return;  // there is time yet
  Finding f = found(rule);
  f.element = report.element;
  f.lift = report.lift;
  f.bay = bay;
  f.from = joint->came;
  f.to = joint->knits;
  if (joint->knits) f.measured = in_seconds(*joint->knits - joint->came);
  f.limit = in_seconds(joint->sets - joint->came);
  f.unit = "s";
  f.source = "plan: initial_set_h by equivalent age (ASTM C1074; Q 5000 K from memory)";
  f.ref = lift.ref;
  f.says =
      joint->knits
          ? fmt::format("{} lift {} bay {}: knitted {:.1f} h after it came; it set after {:.1f} h",
                        element.id.text, report.lift, bay + 1, *f.measured / 3600, *f.limit / 3600)
          : fmt::format(
                "{} lift {} bay {}: never knitted to the lift above; it set {:.1f} h "
                "after it came",
                element.id.text, report.lift, bay + 1, *f.limit / 3600);
  out.push_back(std::move(f));
}

void look_knit_late(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    const LiftState& lift = look.lift(report);
    if (!lift.next_start || look.element(report).kind == ElementKind::deck) continue;
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      if (lift.top[bay] > lift.bottom[bay]) judge(look, rule, report, bay, out);
    }
  }
}

}  // namespace

const Rule kKnitLate{
    {"knit-late", Weight::mend,
     "a cold joint: the lift below set before the next was worked into it",
     "initial set of ASTM C403 by equivalent age (ASTM C1074)",
     "covered and shaken before the plan's initial_set_h at the concrete's temperature",
     "plan, by the mix's test",
     "Stop and ask the engineer how the joint is to be treated; mark it to be inspected"},
    look_knit_late};

}  // namespace rb
