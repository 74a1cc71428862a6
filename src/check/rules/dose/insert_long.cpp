// insert-long: insertions held longer at a point than the plan allows. They count all the same.
#include <map>

#include "base/limits.h"
#include "check/rule.h"
#include "pour/outlook/insertions.h"

namespace rb {

namespace {

// What is told of one lift is one thing, however often it was done so.
void look_insert_long(const Look& look, const Rule& rule, Findings& out) {
  const auto& most = look.plan().limits.insert_most;
  std::map<std::pair<std::size_t, int>, std::vector<const InsertState*>> lifts;
  for (const InsertState& insert : look.state.inserts) {
    if (!before_close(look.state, insert) || !over(insert.what.each, most.value)) continue;
    lifts[{insert.element, insert.what.lift}].push_back(&insert);
  }
  for (const auto& [lift, inserts] : lifts) {
    const InsertState* longest = inserts.front();
    bool one_bay = true;
    for (const InsertState* insert : inserts) {
      if (insert->what.each > longest->what.each) longest = insert;
      one_bay = one_bay && insert->bay == inserts.front()->bay;
    }
    Finding f = found(rule);
    f.element = longest->element;
    f.lift = longest->what.lift;
    if (one_bay) f.bay = longest->bay;
    f.from = inserts.front()->at;
    f.to = inserts.back()->at;
    f.ref = longest->ref;
    f.measured = amount(longest->what.each);
    f.limit = amount(most.value);
    f.source = limit_source(rule, most.from);
    f.sentence = said(
        "{element} lift {lift}: vibrators held {measured} at a point, limit {limit}; insertions "
        "so: {times}");
    f.facts = {{"times", counted(inserts.size())}};
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
