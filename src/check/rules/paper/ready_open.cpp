// ready-open: concrete was placed while an item of the walk-down was still not in order.
#include <map>

#include "check/rule.h"

namespace rb {

namespace {

void look_ready_open(const Look& look, const Rule& rule, Findings& out) {
  std::optional<Seconds> first;
  for (const LiftReport& report : look.lifts) {
    if (!first || report.placed_from < *first) first = report.placed_from;
  }
  if (!first) return;
  std::map<std::string, const ReadyState*> latest;
  for (const ReadyState& item : look.state.ready) {
    if (item.at <= *first) latest[item.what.item] = &item;
  }
  for (const auto& [name, item] : latest) {
    if (item->what.ok) continue;
    Finding f = found(rule);
    f.from = item->at;
    f.to = *first;
    f.ref = item->ref;
    f.sentence = item->what.note.empty()
                     ? said("placing began while \"{item}\" was not in order")
                     : said("placing began while \"{item}\" was not in order ({note})");
    f.facts = {{"item", name}, {"note", item->what.note}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kReadyOpen{
    {"ready-open", said("Readiness point open"), Severity::mend, Cost::paper,
     "a pour begun before the form and crew are ready", said("common practice, no source"),
     "every item checked is in order before lift 1", "nobody",
     said("Put it in order, or hold; log the item again")},
    look_ready_open};

}  // namespace rb
