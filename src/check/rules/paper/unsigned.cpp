// unsigned: a closed pour that the foreman or the inspector has not signed, or that may be another
// than was signed.
#include <algorithm>
#include <optional>

#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"

namespace rb {

namespace {

// The signature after which least came that may change what was signed. Signed before it was
// closed it was signed before it was whole.
std::optional<SignatureState> signed_as(const PourState& state,
                                        const std::vector<SignatureState>& signatures,
                                        event::Role role) {
  std::optional<SignatureState> best;
  for (const SignatureState& sign : signatures) {
    if (sign.role != role || state.log[sign.ref].when < *state.closed) continue;
    if (!best || sign.unsettled < best->unsettled) best = sign;
  }
  return best;
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
  const auto signatures = signatures_of(state);
  for (const event::Role role : {event::Role::foreman, event::Role::inspector}) {
    const auto sign = signed_as(state, signatures, role);
    if (sign && sign->unsettled == 0) continue;
    Finding f = found(rule);
    f.from = state.clock(*state.closed);
    if (sign) {
      f.ref = sign->ref;
      f.facts = {{"role", Term{to_text(role)}}, {"events", counted(sign->unsettled)}};
      f.sentence = said("signed by the {role} before events that may change it: {events}");
      out.push_back(std::move(f));
      continue;
    }
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
     said("common practice, no source"),
     "foreman and inspector sign a closed pour; what comes after asks them again", "nobody",
     said("Review the record and sign it")},
    look_unsigned};

}  // namespace rb
