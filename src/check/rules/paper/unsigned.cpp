// unsigned: a closed pour that the foreman or the inspector has not signed.
#include <algorithm>
#include <optional>

#include "check/rule.h"
#include "pour/log/log_entry.h"

namespace rb {

namespace {

// Signed before it was closed it was signed before it was whole.
bool signed_as(const PourState& state, event::Role role) {
  return std::any_of(state.signs.begin(), state.signs.end(), [&](EventRef ref) {
    const LogEntry& sign = state.log[ref];
    return std::get<event::Sign>(sign.event.what).role == role && sign.when >= *state.closed;
  });
}

// A signature by somebody without that role stands in the book and does not count.
std::optional<EventRef> set_aside(const PourState& state, event::Role role) {
  for (EventRef ref = state.log.size(); ref-- > 0;) {
    const LogEntry& entry = state.log[ref];
    const auto* sign = std::get_if<event::Sign>(&entry.event.what);
    if (sign != nullptr && sign->role == role && !entry.struck &&
        entry.sense == LogEntry::Sense::wrong) {
      return ref;
    }
  }
  return std::nullopt;
}

void look_unsigned(const Look& look, const Rule& rule, Findings& out) {
  const PourState& state = look.state;
  if (!state.closed) return;
  for (const event::Role role : {event::Role::foreman, event::Role::inspector}) {
    if (signed_as(state, role)) continue;
    Finding f = found(rule);
    f.from = state.clock(*state.closed);
    f.ref = set_aside(state, role);
    f.sentence = said("the pour is closed and not signed by the {role}");
    f.facts = {{"role", Term{to_text(role)}}};
    if (f.ref) {
      f.sentence = said(
          "the pour is closed and not signed by the {role}; one signature does not "
          "count: {why}");
      f.facts.push_back({"why", Clause{state.log[*f.ref].why_not}});
    }
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kUnsigned{
    {"unsigned", said("Not signed yet"), Severity::note, Cost::paper, "a record nobody stands for",
     said("common practice, no source"), "foreman and inspector sign a closed pour", "nobody",
     said("Review the record and sign it")},
    look_unsigned};

}  // namespace rb
