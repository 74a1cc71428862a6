// insert-long: insertions held longer at a point than the plan allows. They count all the same.
#include <map>

#include "base/limits.h"
#include "check/worst_insert.h"

namespace rb {

namespace {

void look_insert_long(const Look& look, const Rule& rule, Findings& out) {
  const auto& most = look.plan().limits.insert_most;
  std::map<std::pair<std::size_t, int>, WorstInsert> lifts;
  for (const InsertState& insert : look.state.inserts) {
    if (!before_close(look.state, insert) || !over(insert.what.each, most.value)) continue;
    lifts[{insert.element, insert.what.lift}].take(insert, insert.what.each / most.value);
  }
  for (const auto& [lift, worst] : lifts) {
    Finding f = worst.told(rule);
    f.measured = amount(worst.insert->what.each);
    f.limit = amount(most.value);
    f.source = limit_source(rule, most.from);
    f.sentence = said(
        "{element} lift {lift}: vibrators held {measured} at a point, limit {limit}; insertions "
        "so: {times}");
    f.facts = {{"times", count(worst.times)}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kInsertLong{
    {"insert-long", said("Insertion held too long"), Severity::note, Cost::face,
     "stone that sinks and paste that rises where a head is held too long",
     said("5 to 15 s at a point: a public army training text (read)"), "insert_s_max 15 s",
     "plan, by the engineer", said("Draw the head up sooner; look for streaks when stripped")},
    look_insert_long};

}  // namespace rb
