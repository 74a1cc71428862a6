#include "check/causes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "pour/log/log_entry.h"
#include "pour/plan/row_reach.h"

namespace rb {

namespace {

struct Pair {
  const Look& look;
  const Finding& effect;
  const Finding& cause;

  [[nodiscard]] bool same_element() const {
    return effect.element && effect.element == cause.element;
  }
  [[nodiscard]] bool same_lift() const { return same_element() && effect.lift == cause.lift; }
  [[nodiscard]] bool same_row() const {
    return same_element() && effect.row && effect.row == cause.row;
  }
  // A finding without a bay is about all of them.
  [[nodiscard]] bool same_bay() const {
    return !effect.bay || !cause.bay || effect.bay == cause.bay;
  }
  [[nodiscard]] const Element& element() const { return look.plan().elements[*effect.element]; }
  [[nodiscard]] const Row& row() const { return element().rows[*cause.row]; }
};

std::optional<double> figure(const Finding& f, std::string_view name) {
  for (const Fact& fact : f.facts) {
    const auto* figure = std::get_if<Amount>(&fact.value);
    if (fact.name == name && figure != nullptr) return figure->si;
  }
  return std::nullopt;
}

// A box around what was found: the worst patch of dose-low, the spot of dose-high.
struct Spot {
  Length x0, x1, z0, z1;
};
std::optional<Spot> spot_of(const Finding& f) {
  const auto x = figure(f, "x"), z = figure(f, "z");
  if (!x || !z) return std::nullopt;
  return Spot{metres(*x), metres(*x + figure(f, "w").value_or(0)), metres(*z),
              metres(*z + figure(f, "h").value_or(0))};
}

bool row_reaches(const Element& element, const Row& row, const Spot& spot) {
  const RowSpan span = span_of(element, row);
  const Length x = (spot.x0 + spot.x1) * 0.5;
  const Length z = (spot.z0 + spot.z1) * 0.5;
  return x >= span.left && x <= span.right && z >= span.low && z <= span.high;
}

bool spot_in_reach(const Pair& p) {
  const auto spot = spot_of(p.effect);
  return spot && p.same_element() && row_reaches(p.element(), p.row(), *spot);
}
bool lift_in_reach(const Pair& p) {
  return p.same_lift() && spot_in_reach(p);
}

// The gap of row-far holds some of the spot.
bool in_gap(const Pair& p) {
  const auto spot = spot_of(p.effect);
  const auto from = figure(p.cause, "gap_from"), to = figure(p.cause, "gap_to");
  if (!spot || !from || !to || !p.same_element()) return false;
  const bool along = p.cause.row.has_value();
  const Length low = along ? spot->x0 : spot->z0;
  const Length high = along ? spot->x1 : spot->z1;
  if (low >= metres(*to) || high <= metres(*from)) return false;
  if (!along) return true;
  const RowSpan span = span_of(p.element(), p.row());
  return spot->z0 < span.high && spot->z1 > span.low;
}

// knit-late of a bay that came against one, or against another element, that had set.
bool beside(const Finding& f) {
  return std::any_of(f.facts.begin(), f.facts.end(), [](const Fact& fact) {
    return fact.name == std::string_view{"beside"} || fact.name == std::string_view{"other"};
  });
}

// A joint that concrete covered before it set and nobody worked in time.
struct LeftJoint {
  int lift = 0;  // the one that came on it
  Length z;
};
std::optional<LeftJoint> left_joint(const Look& look, const Finding& f) {
  if (!f.element || !f.bay || !f.ref || !f.from || !f.limit) return std::nullopt;
  if (beside(f)) return std::nullopt;  // no row helps
  const ElementState& there = look.state.elements[*f.element];
  for (const LiftState& lift : there.lifts) {
    if (lift.ref != *f.ref) continue;
    const Length z = lift.top[*f.bay];
    const auto covered = there.tops[*f.bay].covered(z);
    if (!covered || *covered >= *f.from + Seconds{f.limit->si}) return std::nullopt;
    LeftJoint joint{0, z};
    for (const LiftState& above : there.lifts) {
      if (above.started <= *covered) joint.lift = above.lift;
    }
    return joint;
  }
  return std::nullopt;
}

// The bay came late: against the bay beside it and on its own joint below.
bool bay_came_late(const Pair& p) {
  if (!p.same_element() || !p.effect.bay || p.effect.bay != p.cause.bay || !p.cause.lift ||
      !p.effect.lift || !beside(p.cause) || beside(p.effect) || !p.effect.to || !p.cause.from) {
    return false;
  }
  return *p.cause.lift == *p.effect.lift + 1 && !left_joint(p.look, p.effect);
}

// Too little in any bay: it is told once for the whole lift, with the worst bay named.
bool weak_lift_on_joint(const Pair& p) {
  if (!p.same_element()) return false;
  const auto joint = left_joint(p.look, p.effect);
  return joint && p.cause.lift == joint->lift;
}
// The lift on the joint is the cause's.
bool lift_on_joint(const Pair& p) {
  return p.same_bay() && weak_lift_on_joint(p);
}
bool row_on_joint(const Pair& p) {
  if (!lift_on_joint(p)) return false;
  const RowSpan span = span_of(p.element(), p.row());
  const auto joint = left_joint(p.look, p.effect);
  return joint->z >= span.low && joint->z <= span.high;
}
// What no motor reaches of the bay's joint.
bool gap_on_joint(const Pair& p) {
  if (!p.same_element()) return false;
  const auto joint = left_joint(p.look, p.effect);
  const auto from = figure(p.cause, "gap_from"), to = figure(p.cause, "gap_to");
  if (!joint || !from || !to) return false;
  if (!p.cause.row) return joint->z >= metres(*from) && joint->z <= metres(*to);
  const Length start = p.element().bay_start(*p.effect.bay);
  const RowSpan span = span_of(p.element(), p.row());
  return metres(*to) > start && metres(*from) < start + p.element().bays[*p.effect.bay] &&
         joint->z >= span.low && joint->z <= span.high;
}

// The row ran for the lift before there was concrete in its reach.
bool ran_too_soon(const Pair& p) {
  return p.same_row() && p.cause.from && p.effect.to && *p.cause.from < *p.effect.to;
}
bool ran_too_soon_on_lift(const Pair& p) {
  if (!p.same_element() || !p.effect.lift || !p.cause.to || !p.effect.from) return false;
  const auto& serves = p.row().serves;
  return std::find(serves.begin(), serves.end(), *p.effect.lift) != serves.end() &&
         *p.cause.to <= *p.effect.to;
}

bool row_of_bare_bay(const Pair& p) {
  if (!p.same_lift()) return false;
  return !p.cause.bay ||
         lowest_in_bay(p.element(), p.element().rows[*p.effect.row], *p.cause.bay).has_value();
}

bool same_run(const Pair& p) {
  return p.effect.ref && p.effect.ref == p.cause.ref;
}

// A run nobody ended counts as going on: its motors load their inverter.
bool feeds_it(const Pair& p) {
  if (!p.effect.inverter || !p.effect.from || !p.cause.from || *p.cause.from > *p.effect.from) {
    return false;
  }
  const auto& runs = p.look.state.runs;
  const auto run = std::find_if(runs.begin(), runs.end(),
                                [&](const RunState& r) { return r.ref == p.cause.ref; });
  if (run == runs.end() || p.look.run_end(*run) <= *p.effect.from) return false;
  const Row& row = p.look.plan().elements[*p.cause.element].rows[*p.cause.row];
  for (const Inverter& inverter : p.look.plan().power) {
    if (inverter.id != *p.effect.inverter) continue;
    return std::any_of(row.motors.begin(), row.motors.end(),
                       [&](const Motor& motor) { return feeds(inverter, motor.id); });
  }
  return false;
}

// The steep stretch lies in the windows of both lifts.
bool rose_on(const Pair& p) {
  return p.same_element() && p.effect.lift && p.cause.lift && *p.cause.lift == *p.effect.lift - 1 &&
         *p.effect.from <= *p.cause.to + p.look.plan().limits.rise_window.value;
}

// The wet load is the one the form was reckoned with.
bool as_wet(const Pair& p) {
  const auto slump = figure(p.effect, "slump");
  return slump && p.cause.measured && std::abs(*slump - p.cause.measured->si) < 1e-9;
}

// The joint that set is the one that is too old, here or in the bay that came late.
bool same_joint(const Pair& p) {
  return p.same_lift() || (p.same_element() && p.cause.lift && p.effect.lift &&
                           *p.cause.lift == *p.effect.lift + 1 && beside(p.cause));
}

// The lift was the last begun while the row ran on what had come up too fast.
bool rose_under(const Pair& p) {
  if (!p.same_element() || !p.effect.to || !p.cause.lift || !p.cause.from) return false;
  const LiftState* last = nullptr;
  for (const LiftState& lift : p.look.state.elements[*p.effect.element].lifts) {
    if (lift.started <= *p.effect.to) last = &lift;
  }
  return last != nullptr && last->lift == *p.cause.lift;
}

// The row ran out of its speeds for the lift.
bool ran_so_then(const Pair& p) {
  return p.same_row() && p.cause.from && p.effect.from && p.effect.to && p.cause.to &&
         *p.cause.from <= *p.effect.to && *p.cause.to >= *p.effect.from;
}

// The row ran for the lift only when the next stood on it.
bool ran_a_lift_late(const Pair& p) {
  return p.same_row() && p.effect.to && p.cause.from && *p.cause.from >= *p.effect.to;
}

// The row was stopped by the inverter for the lift.
bool tripped_so(const Pair& p) {
  return p.same_row() && p.same_lift();
}
// One trip stops several rows: the first named stands for it.
bool same_trip(const Pair& p) {
  return p.effect.inverter == p.cause.inverter && p.effect.from == p.cause.from &&
         p.effect.ref > p.cause.ref;
}
// One setting of an inverter that several runs turned at.
bool set_so_before(const Pair& p) {
  return p.effect.inverter && p.effect.inverter == p.cause.inverter &&
         p.effect.measured == p.cause.measured && p.effect.ref > p.cause.ref;
}

bool same_form(const Pair& p) {
  return p.same_element();
}

bool same_ticket(const Pair& p) {
  return p.effect.ticket && p.effect.ticket == p.cause.ticket;
}

// The row fell short of the lift before, too, over the same place.
bool short_again(const Pair& p) {
  return p.same_row() && p.effect.lift && p.cause.lift && *p.effect.lift == *p.cause.lift + 1;
}

bool inserted_so(const Pair& p) {
  return p.same_lift() && p.same_bay();
}
// Too little is told once a lift, with the worst bay named.
bool low_lift(const Pair& p) {
  return p.same_lift();
}
bool row_alone(const Pair& p) {
  return p.same_row();
}

// What was gone on over is what the finding tells of: one thing gone wrong. A face is stripped
// after it was gone on over, and not before something else of that face was.
bool gone_on_over(const Pair& p) {
  if (!p.same_element() || !p.effect.ref || p.effect.side != p.cause.side) return false;
  const auto* passed = std::get_if<event::Override>(&p.look.state.log[*p.effect.ref].event.what);
  return passed != nullptr && passed->rule == p.cause.rule && p.effect.from && p.cause.from &&
         *p.effect.from <= *p.cause.from;
}

struct Follows {
  std::string_view effect, cause;
  bool (*from)(const Pair&);
};
// The first that holds counts. No circle: what follows from a finding stands above what it follows
// from in the order of the list's effects.
constexpr Follows kFollows[] = {
    {"knit-late", "unvibrated", lift_on_joint},
    {"knit-late", "row-missed", row_on_joint},
    {"knit-late", "row-far", gap_on_joint},
    {"knit-late", "dose-low", weak_lift_on_joint},
    {"knit-late", "insert-few", lift_on_joint},
    {"knit-late", "insert-sparse", lift_on_joint},
    {"knit-late", "knit-late", bay_came_late},
    {"joint-old", "knit-late", same_joint},
    {"knit-late", "trip-open", row_on_joint},
    {"dose-low", "trip-open", lift_in_reach},
    {"dose-low", "row-missed", lift_in_reach},
    {"dose-low", "run-short", lift_in_reach},
    {"dose-low", "row-far", in_gap},
    {"dose-low", "speed-out", spot_in_reach},
    {"face-low", "trip-open", lift_in_reach},
    {"face-low", "row-missed", lift_in_reach},
    {"face-low", "run-short", lift_in_reach},
    {"face-low", "row-far", in_gap},
    {"face-low", "speed-out", spot_in_reach},
    {"insert-few", "dose-low", low_lift},
    {"insert-sparse", "dose-low", low_lift},
    {"row-missed", "unvibrated", row_of_bare_bay},
    {"row-missed", "row-empty", ran_too_soon},
    {"row-missed", "head-high", ran_a_lift_late},
    {"row-missed", "row-missed", short_again},
    {"run-short", "trip-open", tripped_so},
    {"run-short", "row-empty", ran_too_soon},
    {"run-short", "speed-out", ran_so_then},
    {"run-short", "run-short", short_again},
    {"unvibrated", "row-empty", ran_too_soon_on_lift},
    {"insert-few", "insert-sparse", inserted_so},
    {"dose-high", "run-unended", spot_in_reach},
    {"dose-high", "run-long", spot_in_reach},
    {"run-long", "run-unended", row_alone},
    {"head-high", "run-unended", same_run},
    {"head-high", "form-short", same_form},
    {"head-high", "rise-fast", rose_under},
    {"power-over", "run-unended", feeds_it},
    {"form-short", "slump-out", as_wet},
    {"slump-out", "water-added", same_ticket},
    {"air-out", "water-added", same_ticket},
    {"density-out", "water-added", same_ticket},
    {"specimen-low", "water-added", same_ticket},
    {"evaporation", "cure-late", same_form},
    {"load-old", "water-added", same_ticket},
    {"load-old", "slump-out", same_ticket},
    {"rise-fast", "rise-fast", rose_on},
    {"speed-out", "speed-out", set_so_before},
    {"trip-open", "trip-open", same_trip},
    {"gate-passed", "strip-early", gone_on_over},
    {"gate-passed", "strip-leave", gone_on_over},
};

std::string own_id(const Look& look, const Finding& f) {
  std::string id = f.rule;
  const auto add = [&](const std::string& part) { id += '/' + part; };
  if (f.element) add(look.plan().elements[*f.element].id.text);
  if (f.lift) add(fmt::format("{}", *f.lift));
  if (f.element && f.row) {
    const Row& row = look.plan().elements[*f.element].rows[*f.row];
    add(to_text(row.side));
    add(row.id.text);
  }
  if (f.ticket) add(f.ticket->text);
  if (f.inverter) add(f.inverter->text);
  if (f.ref) id += fmt::format("#{}", *f.ref + 1);
  return id;
}

}  // namespace

bool follows(const Finding& f) {
  return f.group.substr(0, f.group.find_first_of("/#")) != f.rule;
}

void tell_causes(const Look& look, Findings& findings) {
  std::map<std::string_view, std::vector<std::size_t>> by_rule;
  for (std::size_t i = 0; i < findings.size(); ++i) by_rule[findings[i].rule].push_back(i);
  std::vector<std::size_t> causes(findings.size());
  for (std::size_t i = 0; i < findings.size(); ++i) causes[i] = i;
  for (const Follows& link : kFollows) {
    const auto effects = by_rule.find(link.effect), heads = by_rule.find(link.cause);
    if (effects == by_rule.end() || heads == by_rule.end()) continue;
    for (const std::size_t effect : effects->second) {
      if (causes[effect] != effect) continue;
      for (const std::size_t cause : heads->second) {
        if (cause == effect || !link.from({look, findings[effect], findings[cause]})) continue;
        causes[effect] = cause;
        break;
      }
    }
  }
  for (std::size_t i = 0; i < findings.size(); ++i) {
    std::size_t root = i;
    while (causes[root] != root) root = causes[root];
    findings[i].group = own_id(look, findings[root]);
  }
}

}  // namespace rb
