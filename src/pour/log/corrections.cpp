#include "pour/log/corrections.h"

#include <algorithm>
#include <unordered_set>

#include "pour/log/event_json.h"
#include "pour/log/log_entry.h"

namespace rb {

namespace {

void mark_wrong(LogEntry& entry, Saying why) {
  entry.sense = LogEntry::Sense::wrong;
  entry.why_not = std::move(why);
}

EventRef target_of(const PourState& state, EventRef correction) {
  return state.memory.ids.at(corrected(state.log[correction].event)->text);
}

// Whether a correction is aimed at an entry, the latest as at all others.
bool aims_at(const PourState& state, EventRef correction, EventRef target) {
  const auto found = state.memory.ids.find(corrected(state.log[correction].event)->text);
  return found != state.memory.ids.end() && found->second == target && target < correction;
}

// A struck strike strikes nothing: the latest is looked at first.
std::unordered_set<EventRef> struck(const PourState& state) {
  std::unordered_set<EventRef> targets;
  const auto& all = state.memory.corrections;
  for (auto it = all.rbegin(); it != all.rend(); ++it) {
    const LogEntry& entry = state.log[*it];
    const auto* strike = std::get_if<event::Strike>(&entry.event.what);
    if (strike == nullptr || entry.sense == LogEntry::Sense::wrong) continue;
    if (!targets.contains(*it)) targets.insert(state.memory.ids.at(strike->target.text));
  }
  return targets;
}

void put_in_force(PourState& state, EventRef ref, std::vector<Correction>& out) {
  LogEntry& entry = state.log[ref];
  if (entry.struck || entry.sense != LogEntry::Sense::counts) return;
  const EventRef aimed = target_of(state, ref);
  LogEntry& target = state.log[aimed];
  Correction correction{aimed, ref, to_line(target.event), {}};
  if (const auto* fix = std::get_if<event::Fix>(&entry.event.what)) {
    auto changed = with_fields(target.event, fix->set, said("the correction"));
    if (!changed) {
      mark_wrong(entry, as_saying(changed.error()));
      return;
    }
    if (!target.as_entered) target.as_entered = target.event;
    target.event = std::move(*changed);
    correction.after = to_line(target.event);
  }
  out.push_back(std::move(correction));
}

// Reads an entry anew, with the corrections of it that now stand.
void read_anew(PourState& state, EventRef target, Touched& touched) {
  LogEntry& entry = state.log[target];
  if (entry.as_entered) {
    entry.event = std::move(*entry.as_entered);
    entry.as_entered.reset();
  }
  std::erase_if(state.corrections, [&](const Correction& c) { return c.target == target; });
  std::vector<Correction> made;
  for (const EventRef ref : state.memory.corrections) {
    if (!aims_at(state, ref, target)) continue;
    LogEntry& correction = state.log[ref];
    if (misaimed(state, correction.event, ref)) continue;
    correction.sense = LogEntry::Sense::counts;
    correction.why_not = {};
    put_in_force(state, ref, made);
    touched.push_back(ref);
  }
  touched.push_back(target);
  const std::size_t others = state.corrections.size();
  state.corrections.insert(state.corrections.end(), std::make_move_iterator(made.begin()),
                           std::make_move_iterator(made.end()));
  const auto by_entry = [](const Correction& a, const Correction& b) {
    return a.made_by < b.made_by;
  };
  std::inplace_merge(state.corrections.begin(),
                     state.corrections.begin() + static_cast<std::ptrdiff_t>(others),
                     state.corrections.end(), by_entry);
}

}  // namespace

const EventId* corrected(const Event& event) {
  if (const auto* fix = std::get_if<event::Fix>(&event.what)) return &fix->target;
  if (const auto* strike = std::get_if<event::Strike>(&event.what)) return &strike->target;
  return nullptr;
}

std::optional<Saying> misaimed(const PourState& state, const Event& event, EventRef ref) {
  const EventId* target = corrected(event);
  if (target == nullptr) return std::nullopt;
  const auto found = state.memory.ids.find(target->text);
  if (found == state.memory.ids.end() || found->second >= ref) {
    return Saying{said("there is no earlier event {target} to correct"),
                  {{"target", target->text}}};
  }
  const Event& aimed = state.log[found->second].event;
  if (std::holds_alternative<event::PourOpen>(aimed.what) &&
      std::holds_alternative<event::Strike>(event.what)) {
    return said("the opening of the pour cannot be struck");
  }
  if (!std::holds_alternative<event::Fix>(event.what)) return std::nullopt;
  if (corrected(aimed) != nullptr) {
    return said("a correction cannot be changed; strike it and correct anew");
  }
  const auto* sign = std::get_if<event::Sign>(&aimed.what);
  if (sign != nullptr && sign->key) {
    return said("what a key signed cannot be changed; strike it and sign anew");
  }
  if (std::holds_alternative<event::Enrol>(aimed.what)) {
    return said("an enrolment cannot be changed; strike it and enrol anew");
  }
  return std::nullopt;
}

void apply_corrections(PourState& state) {
  for (const EventRef ref : state.memory.corrections) {
    if (auto why = misaimed(state, state.log[ref].event, ref)) {
      mark_wrong(state.log[ref], std::move(*why));
    }
  }
  for (const EventRef ref : struck(state)) state.log[ref].struck = true;
  for (const EventRef ref : state.memory.corrections) put_in_force(state, ref, state.corrections);
}

Touched apply_last_correction(PourState& state) {
  const EventRef last = state.log.size() - 1;
  Touched touched;
  if (auto why = misaimed(state, state.log[last].event, last)) {
    mark_wrong(state.log[last], std::move(*why));
    return touched;
  }
  const EventRef target = target_of(state, last);
  if (std::holds_alternative<event::Fix>(state.log[last].event.what)) {
    put_in_force(state, last, state.corrections);
    return {target};
  }
  // What is struck or stands again takes its corrections with it.
  const auto now = struck(state);
  std::unordered_set<EventRef> anew{target};
  for (const EventRef correction : state.memory.corrections) {
    if (!std::holds_alternative<event::Strike>(state.log[correction].event.what) ||
        misaimed(state, state.log[correction].event, correction)) {
      continue;
    }
    const EventRef ref = target_of(state, correction);
    if (state.log[ref].struck == now.contains(ref)) continue;
    state.log[ref].struck = now.contains(ref);
    touched.push_back(ref);
    // A correction aimed at nothing, as when what it aimed at is lost, leaves nothing to read anew.
    const Event& aimed = state.log[ref].event;
    if (corrected(aimed) != nullptr && !misaimed(state, aimed, ref)) {
      anew.insert(target_of(state, ref));
    }
  }
  for (const EventRef ref : anew) read_anew(state, ref, touched);
  return touched;
}

Touched withdraw_last_fix(PourState& state) {
  const EventRef last = state.log.size() - 1;
  const EventRef target = target_of(state, last);
  state.memory.corrections.pop_back();
  Touched touched;
  read_anew(state, target, touched);
  return touched;
}

}  // namespace rb
