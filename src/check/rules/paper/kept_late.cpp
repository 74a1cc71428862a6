// kept-late: an event that came into the book long after, or before, it was entered.
#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/log/origin.h"

namespace rb {

namespace {

// A clock may be set back by this between a tap and its keeping before it is told of.
constexpr Seconds kSetBack{5};

void look_kept_late(const Look& look, const Rule& rule, Findings& out) {
  const PourState& state = look.state;
  for (const EventRef ref : oddly_entered(state)) {
    const LogEntry& entry = state.log[ref];
    const auto& told = entry.event.entry;
    if (!told || !told->kept || brought_in(state, ref)) continue;
    const Seconds after = between(told->wall, *told->kept);
    if (after <= kLateKept && after >= -kSetBack) continue;
    Finding f = found(rule);
    f.from = f.to = state.clock(entry.when);
    f.measured = amount(after, Measure::any_span);
    f.limit = amount(kLateKept, Measure::any_span);
    f.ref = ref;
    f.facts = {{"event", Term{kind_text(entry.event.what)}},
               {"told", told->wall},
               {"by", amount(std::chrono::abs(after), Measure::any_span)}};
    f.sentence =
        after > Seconds{}
            ? said("{event} says it was entered at {told}, and came into the book {by} later")
            : said(
                  "{event} says it was entered at {told}, and came into the book {by} before that");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kKeptLate{
    {"kept-late", said("Came into the book late"), Severity::note, Cost::paper,
     "an entry written into the book afterwards under an earlier time",
     said("choice of this project"), "{2 min} between an event's entry and its keeping", "nobody",
     said("Look whether the disk could not be written to then; if not, ask where the event came "
          "from")},
    look_kept_late};

}  // namespace rb
