// entered-before: an event that was tapped before it happened, by its own time.
#include <map>

#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/log/origin.h"

namespace rb {

namespace {

// A finger and two clock readings wobble by less than this.
constexpr Seconds kWobble{5};

// When each corrected event was last told of: a time set by a fix is held against the fix's entry.
std::map<EventRef, Moment> told_anew(const PourState& state) {
  std::map<EventRef, Moment> latest;
  for (const Correction& correction : state.corrections) {
    const auto& entry = state.log[correction.made_by].event.entry;
    if (!entry || correction.after.empty()) continue;
    auto& at = latest.try_emplace(correction.target, entry->wall).first->second;
    at = std::max(at, entry->wall);
  }
  return latest;
}

void look_entered_before(const Look& look, const Rule& rule, Findings& out) {
  const PourState& state = look.state;
  const auto anew = told_anew(state);
  for (const EventRef ref : oddly_entered(state)) {
    const LogEntry& entry = state.log[ref];
    if (entry.struck || !entry.event.entry || brought_in(state, ref)) continue;
    const auto fixed = anew.find(ref);
    const Moment told = fixed != anew.end() ? std::max(fixed->second, entry.event.entry->wall)
                                            : entry.event.entry->wall;
    const Seconds ahead = between(told, entry.event.at);
    if (ahead <= kWobble) continue;
    Finding f = found(rule);
    f.from = f.to = state.clock(entry.when);
    f.measured = amount(ahead);
    f.limit = amount(kWobble);
    f.ref = ref;
    f.facts = {{"event", Term{kind_text(entry.event.what)}}};
    f.sentence = said("{event} was entered {measured} before it is said to have happened");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kEnteredBefore{
    {"entered-before", said("Entered before it happened"), Severity::note, Cost::paper,
     "what was expected told as what was seen", said("choice of this project"),
     "{5 s} between an event's time and its entry", "nobody",
     said("Ask who tapped it; correct its time to when it happened")},
    look_entered_before};

}  // namespace rb
