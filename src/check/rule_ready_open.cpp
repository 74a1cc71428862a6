// ready-open: concrete was placed while an item of the walk-down was still not in order.
#include <fmt/format.h>

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
    f.says = fmt::format("placing began while \"{}\" was not in order{}", name,
                         item->what.note.empty() ? "" : " (" + item->what.note + ")");
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kReadyOpen{
    {"ready-open", Weight::mend, "a pour begun before the form and crew are ready",
     "common practice, no source", "every item checked is in order before lift 1", "nobody",
     "Put it in order, or hold; log the item again"},
    look_ready_open};

}  // namespace rb
