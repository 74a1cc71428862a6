// kept-late: an event that came into the book long after, or before, it was entered.
#include <fmt/format.h>

#include "check/rule.h"
#include "pour/origin.h"

namespace rb {

namespace {

// A clock may be set back by this between a tap and its keeping before it is told of.
constexpr Seconds kWobble{5};

std::string span_words(Seconds span) {
  const double s = in_seconds(span);
  if (s < 3600) return fmt::format("{:.0f} s", s);
  if (s < 48 * 3600.0) return fmt::format("{:.1f} h", s / 3600);
  return fmt::format("{:.1f} days", s / 86400);
}

void look_kept_late(const Look& look, const Rule& rule, Findings& out) {
  const PourState& state = look.state;
  for (const EventRef ref : oddly_entered(state)) {
    const LogEntry& entry = state.log[ref];
    const auto& told = entry.event.entry;
    if (!told || !told->kept || brought_in(state, ref)) continue;
    const Seconds after = between(told->wall, *told->kept);
    if (after <= kLateKept && after >= -kWobble) continue;
    Finding f = found(rule);
    f.from = f.to = state.clock(entry.when);
    f.measured = in_seconds(after);
    f.limit = in_seconds(kLateKept);
    f.unit = "s";
    f.ref = ref;
    f.says = fmt::format("{} says it was entered at {}, and came into the book {} {}",
                         kind_text(entry.event.what), to_text(told->wall),
                         span_words(std::chrono::abs(after)),
                         after > Seconds{} ? "later" : "before that");
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kKeptLate{
    {"kept-late", Weight::note, "an entry written into the book afterwards under an earlier time",
     "choice of this project", "2 min between an event's entry and its keeping", "nobody",
     "Look whether the disk could not be written to then; if not, ask where the event came from"},
    look_kept_late};

}  // namespace rb
