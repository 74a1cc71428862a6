// heads-few: fewer internal vibrators at once than the rate of placing wants.
#include <algorithm>
#include <cmath>

#include "check/rule.h"
#include "check/vibrated.h"

namespace rb {

namespace {

// The most heads that worked at once in a bay of a lift, and their group.
struct Heads {
  int most = 0;
  const trade::InternalVibrator* group = nullptr;
};
std::optional<Heads> heads_in(const Look& look, const LiftReport& report, std::size_t bay) {
  std::optional<Heads> heads;
  for (const InsertState& insert : look.state.inserts) {
    if (!goes_into(look, insert, report, bay) || !insert.what.heads) continue;
    if (!heads || *insert.what.heads > heads->most) {
      heads = Heads{*insert.what.heads, &group_of(insert)};
    }
  }
  return heads;
}

// How fast concrete came into a bay of a lift, openings out.
std::optional<trade::VolumeRate> placed(const Look& look, const LiftReport& report,
                                        std::size_t bay) {
  const Element& element = look.element(report);
  const LiftState& lift = look.lift(report);
  const Seconds took = lift.bays[bay].read.value_or(lift.started) - lift.began(bay);
  const Length gained = lift.top[bay] - lift.bottom[bay];
  if (took <= Seconds{} || gained <= Length{}) return std::nullopt;
  return quantity_of<trade::VolumeRate>(
      in_cubic_metres(element.volume(bay, lift.bottom[bay], lift.top[bay])) / in_seconds(took));
}

void look_heads_few(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    if (!by_insertions(look.element(report)) || !look.settled(report)) continue;
    const LiftState& lift = look.lift(report);
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      const auto heads = heads_in(look, report, bay);
      const auto rate = placed(look, report, bay);
      if (!heads || !rate) continue;
      const auto& output = heads->group->output;
      const double least = std::ceil(*rate / output.most - kRounding);
      if (heads->most >= least) continue;
      Finding f = found(rule);
      f.element = report.element;
      f.lift = report.lift;
      f.bay = bay;
      f.from = lift.began(bay);
      f.to = lift.bays[bay].read;
      f.measured = count(heads->most);
      f.limit = count(least);
      f.ref = lift.ref;
      f.sentence = said(
          "{element} lift {lift} bay {bay}: {measured} vibrators at once for {volume} an hour; "
          "{limit} to {upper} keep up with it");
      f.facts = {
          {"volume", Amount{Measure::volume, trade::in_cubic_metres_per_hour(*rate)}, Rounding::up},
          {"upper", count(std::ceil(*rate / output.least - kRounding))}};
      out.push_back(std::move(f));
    }
  }
}

}  // namespace

extern const Rule kHeadsFew{
    {"heads-few", said("Too few vibrators"), Severity::mend, Cost::perhaps,
     "concrete placed faster than it is vibrated: honeycomb",
     said("output of a vibrator by group (ACI 309R, read in a cement body's page): the greater "
          "figure"),
     "the rate of placing over the group's greater output", "plan, by the engineer",
     said("Slow the placing, or put more vibrators in")},
    look_heads_few};

}  // namespace rb
