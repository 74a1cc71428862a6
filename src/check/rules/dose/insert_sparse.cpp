// insert-sparse: insertions too far apart, or not down into the lift below.
#include <map>

#include "check/rule.h"
#include "check/worst_insert.h"

namespace rb {

namespace {

void tell_wide(const Look& look, const Rule& rule, const WorstInsert& worst, Findings& out) {
  const InsertState& insert = *worst.insert;
  const trade::InternalVibrator& group = group_of(insert);
  const auto& factor = look.plan().limits.insert_spacing_factor;
  Finding f = worst.told(rule);
  f.measured = amount(insert.what.spacing);
  f.limit = amount(widest_apart(look.plan(), insert));
  f.source = limit_source(rule, factor.from);
  f.sentence = said(
      "{element} lift {lift}: insertions {measured} apart, limit {limit}; group {group} reaches "
      "{least} to {most}; insertions so: {times}");
  f.facts = {{"group", count(insert.what.group)},
             {"least", amount(group.radius.least)},
             {"most", amount(group.radius.most)},
             {"times", count(worst.times)}};
  out.push_back(std::move(f));
}

void tell_shallow(const Look& look, const Rule& rule, const WorstInsert& worst, Findings& out) {
  const auto& depth = look.plan().limits.knit_depth;
  Finding f = worst.told(rule);
  f.measured = amount(worst.insert->what.depth_below);
  f.limit = amount(depth.value);
  f.source = limit_source(rule, depth.from);
  f.sentence = said(
      "{element} lift {lift}: insertions into the lift below {measured}, limit {limit}; "
      "insertions so: {times}");
  f.facts = {{"times", count(worst.times)}};
  out.push_back(std::move(f));
}

// What is told of one lift is one thing, however often it was done so.
void look_insert_sparse(const Look& look, const Rule& rule, Findings& out) {
  const Length deep = look.plan().limits.knit_depth.value;
  std::map<std::pair<std::size_t, int>, std::pair<WorstInsert, WorstInsert>> lifts;
  for (const InsertState& insert : look.state.inserts) {
    if (!before_close(look.state, insert)) continue;
    auto& [wide, shallow] = lifts[{insert.element, insert.what.lift}];
    const Length widest = widest_apart(look.plan(), insert);
    if (over(insert.what.spacing, widest)) {
      wide.take(insert, insert.what.spacing / widest);
    } else if (insert.what.lift > 1 && under(insert.what.depth_below, deep)) {
      shallow.take(insert, (deep - insert.what.depth_below) / deep);
    }
  }
  for (const auto& [lift, worst] : lifts) {
    if (worst.first.times > 0) tell_wide(look, rule, worst.first, out);
    if (worst.second.times > 0) tell_shallow(look, rule, worst.second, out);
  }
}

}  // namespace

extern const Rule kInsertSparse{
    {"insert-sparse", said("Insertions too far apart"), Severity::mend, Cost::perhaps,
     "unvibrated concrete between insertions; lifts not knitted",
     said("ACI 309R: spacing 1.5 x radius of action, {150 mm} into the lift below (from memory; "
          "radii "
          "read)"),
     "insert_spacing_factor 1.5 x the group's mean radius; knit_depth 0.15 m",
     "plan, by the engineer", said("Insert closer together and down into the lift below")},
    look_insert_sparse};

}  // namespace rb
