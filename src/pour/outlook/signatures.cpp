#include "pour/outlook/signatures.h"

#include <algorithm>
#include <tuple>
#include <type_traits>

#include "pour/log/corrections.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/gates.h"

namespace rb {

namespace {

template <class Kind, class... Kinds>
constexpr bool one_of(const std::tuple<Kinds...>* /*list*/) {
  return (std::is_same_v<Kind, Kinds> || ...);
}

using Harmless =
    std::tuple<event::Accept, event::SendBack, event::Sign, event::Enrol, event::Strip,
               event::Blemish, event::Repair, event::Reinspect, event::Photo, event::Inspect>;

// Going on over the gate before a stripped face belongs to the face, not to the pour.
bool of_stripping(const Happening& what) {
  const auto* over = std::get_if<event::Override>(&what);
  return over != nullptr &&
         (over->rule == rule_of(Gate::strip_early) || over->rule == rule_of(Gate::strip_leave));
}

bool harmless(const Happening& what) {
  if (of_stripping(what)) return true;
  return std::visit(
      []<class Kind>(const Kind& /*kind*/) {
        return one_of<Kind>(static_cast<const Harmless*>(nullptr)) ||
               one_of<Kind>(static_cast<const event::AfterKinds*>(nullptr));
      },
      what);
}

}  // namespace

bool matters_after(const PourState& state, EventRef ref) {
  // A strike may strike a correction: what that corrects tells.
  while (true) {
    const LogEntry& entry = state.log[ref];
    const EventId* target = corrected(entry.event);
    if (target == nullptr) return !harmless(entry.event.what);
    const auto aimed = state.memory.ids.find(target->text);
    if (aimed == state.memory.ids.end() || aimed->second >= ref) return false;  // corrects nothing
    ref = aimed->second;
  }
}

std::vector<SignatureState> signatures_of(const PourState& state) {
  std::vector<SignatureState> signatures;
  signatures.reserve(state.signs.size());
  for (const EventRef ref : state.signs) {
    const Event& event = state.log[ref].event;
    const auto& sign = std::get<event::Sign>(event.what);
    SignatureState made{.ref = ref, .role = sign.role, .by = event.by};
    for (std::size_t i = 0; sign.key && i < state.enrolments.size(); ++i) {
      const event::Enrol& enrol = state.enrolments[i].what;
      if (enrol.person == event.by && enrol.key == *sign.key) made.enrolment = i;
    }
    // A key vouches for what was in the book as it signed, which may end before its own event.
    const auto first = sign.events ? static_cast<EventRef>(*sign.events) : ref;
    for (EventRef later = std::min(first, ref); later < state.log.size(); ++later) {
      if (later == ref) continue;
      ++made.after;
      if (matters_after(state, later)) ++made.unsettled;
    }
    signatures.push_back(made);
  }
  return signatures;
}

}  // namespace rb
