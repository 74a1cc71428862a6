#include "pour/log/fold.h"

#include <algorithm>

#include "pour/log/corrections.h"
#include "pour/log/fold_happening.h"
#include "pour/log/log_entry.h"
#include "pour/log/may_happen.h"
#include "pour/log/origin.h"

namespace rb {

namespace {

// The wall and the steady clock may drift apart this much between two taps before it is a step.
constexpr Seconds kClockSlack{2};

// What the clocks of the tablet say of an event entered after all the others.
struct ClockReading {
  Seconds stepped{};                ///< to take out of its moment
  std::optional<Seconds> step{};    ///< found with this event
  std::optional<BootClock> then{};  ///< of its start of the tablet, from now on
};

ClockReading read_clock(const FoldMemory& memory, const Event& event) {
  if (!event.entry) return {};
  const auto known = memory.boots.find(event.entry->boot);
  if (known == memory.boots.end())
    return {{}, {}, BootClock{event.entry->wall, event.entry->steady, {}}};
  const BootClock& boot = known->second;
  const Seconds step = between(boot.wall, event.entry->wall) - (event.entry->steady - boot.steady);
  if (std::chrono::abs(step) <= kClockSlack) {
    return {boot.stepped, {}, BootClock{event.entry->wall, event.entry->steady, boot.stepped}};
  }
  const Seconds stepped = boot.stepped + step;
  return {stepped, step, BootClock{event.entry->wall, event.entry->steady, stepped}};
}

Moment happened(const Event& event, Seconds stepped) {
  return after(event.at, -stepped);
}

// The end of the log; its place in order of time is found later.
void enter(PourState& state, const Event& event) {
  const EventRef ref = state.log.size();
  const ClockReading clock = read_clock(state.memory, event);
  if (clock.then) state.memory.boots.insert_or_assign(event.entry->boot, *clock.then);
  if (!event.id.empty()) state.memory.ids.emplace(event.id.text, ref);
  if (corrected(event) != nullptr) {
    state.memory.corrections.push_back(ref);
  } else if (!std::holds_alternative<event::PourOpen>(event.what)) {
    state.taps.push_back(ref);
  }
  state.memory.stepped.push_back(clock.stepped);
  state.log.push_back({.event = event, .when = happened(event, clock.stepped)});
  take_count(state, ref);
  if (clock.step) {
    state.clock_steps.push_back({ref, state.clock(state.log[ref].when), *clock.step});
  }
}

// Where in the order of time an entry comes: after all that happened by then and were entered
// before.
std::size_t place_in_order(const PourState& state, Moment when, EventRef ref) {
  const auto before = [&](EventRef a, const std::pair<Moment, EventRef>& b) {
    return std::pair{state.log[a].when, a} < b;
  };
  // Most happen last or nearly so: looked for from the end, further back by twice as much.
  const std::pair key{when, ref};
  std::size_t from = state.order.size(), to = from;
  for (std::size_t back = 1; from > 0; back *= 2) {
    from = state.order.size() - std::min(back, state.order.size());
    if (before(state.order[from], key)) break;
    to = from;
  }
  const auto begin = state.order.begin();
  const auto place = std::lower_bound(begin + static_cast<std::ptrdiff_t>(from),
                                      begin + static_cast<std::ptrdiff_t>(to), key, before);
  return static_cast<std::size_t>(place - begin);
}

// Takes back all from a place in the order on.
void rewind(PourState& state, std::size_t place) {
  if (place >= state.memory.marks.size()) return;
  take_back_changes(state, state.memory.marks[place].changes,
                    state.clock(state.log[state.order[place]].when));
  state.last = state.memory.marks[place].last;
  state.memory.marks.resize(place);
  for (std::size_t i = place; i < state.order.size(); ++i) {
    LogEntry& entry = state.log[state.order[i]];
    if (corrected(entry.event) != nullptr) continue;  // these are judged by what they aim at
    entry.sense = LogEntry::Sense::counts;
    entry.why_not = {};
  }
}

void play_on(PourState& state) {
  for (std::size_t i = state.memory.marks.size(); i < state.order.size(); ++i) {
    state.memory.marks.push_back({state.memory.changes.size(), state.last});
    const LogEntry& entry = state.log[state.order[i]];
    if (!entry.struck && entry.sense == LogEntry::Sense::counts) {
      apply_happening(state, state.order[i]);
    }
  }
}

std::vector<Event> as_entered(const PourState& state) {
  std::vector<Event> events;
  events.reserve(state.log.size());
  for (const LogEntry& entry : state.log) {
    events.push_back(entry.as_entered ? *entry.as_entered : entry.event);
  }
  return events;
}

// Lets entries that now read otherwise happen anew, and all that happened since. False: the opening
// or the first moment of the pour is among them, and all must be folded anew.
bool happen_anew(PourState& state, const Touched& touched) {
  std::size_t from = state.order.size();
  std::vector<std::pair<EventRef, Moment>> moved;
  for (const EventRef ref : touched) {
    const LogEntry& entry = state.log[ref];
    const Moment when = happened(entry.event, state.memory.stepped[ref]);
    from =
        std::min({from, place_in_order(state, entry.when, ref), place_in_order(state, when, ref)});
    if (when != entry.when) moved.emplace_back(ref, when);
  }
  if (from == 0) return false;
  rewind(state, from);
  for (const auto& [ref, when] : moved) {
    state.log[ref].when = when;
    for (ClockStep& step : state.clock_steps) {
      if (step.ref == ref) step.at = state.clock(when);
    }
  }
  std::sort(state.order.begin() + static_cast<std::ptrdiff_t>(from), state.order.end(),
            [&](EventRef a, EventRef b) {
              return std::pair{state.log[a].when, a} < std::pair{state.log[b].when, b};
            });
  play_on(state);
  return true;
}

void put_in_order(PourState& state, EventRef ref) {
  const std::size_t place = place_in_order(state, state.log[ref].when, ref);
  rewind(state, place);
  state.order.insert(state.order.begin() + static_cast<std::ptrdiff_t>(place), ref);
}

}  // namespace

Result<PourState> fold(std::span<const Event> events) {
  if (events.empty() || !std::holds_alternative<event::PourOpen>(events.front().what)) {
    return fail(Error::Kind::input, said("the pour's events"), said("do not begin with pour-open"));
  }
  PourState state;
  state.log.reserve(events.size());
  for (const Event& event : events) enter(state, event);
  apply_corrections(state);

  const auto& open = std::get<event::PourOpen>(state.log.front().event.what);
  state.pour = open.pour;
  state.plan = open.plan;
  state.elements.resize(state.plan->elements.size());
  for (std::size_t i = 0; i < state.elements.size(); ++i) {
    state.elements[i].tops.resize(state.plan->elements[i].bays.size());
    state.elements[i].rows.resize(state.plan->elements[i].rows.size());
  }
  state.order.resize(state.log.size());
  for (EventRef ref = 0; ref < state.order.size(); ++ref) {
    state.order[ref] = ref;
    LogEntry& entry = state.log[ref];
    if (entry.as_entered) entry.when = happened(entry.event, state.memory.stepped[ref]);
  }
  std::stable_sort(state.order.begin(), state.order.end(),
                   [&](EventRef a, EventRef b) { return state.log[a].when < state.log[b].when; });
  state.zero = state.log[state.order.front()].when;
  leave_trace_of_all(state);
  for (ClockStep& step : state.clock_steps) step.at = state.clock(state.log[step.ref].when);
  play_on(state);
  return state;
}

void extend(PourState& state, const Event& event) {
  const Moment when = happened(event, read_clock(state.memory, event).stepped);
  const EventRef ref = state.log.size();
  if (place_in_order(state, when, ref) > 0) {
    enter(state, event);
    Touched touched;
    if (corrected(event) != nullptr) touched = apply_last_correction(state);
    const bool opening = std::find(touched.begin(), touched.end(), EventRef{0}) != touched.end();
    put_in_order(state, ref);
    if (!opening && happen_anew(state, touched)) return play_on(state);
    state = *fold(as_entered(state));
    return;
  }
  std::vector<Event> events = as_entered(state);
  events.push_back(event);
  state = *fold(events);
}

namespace {

Failed refusal(const Event& event, Saying why) {
  return fail(Error::Kind::input, kind_text(event.what), std::move(why));
}

// Takes the fix entered last out of the state as if it had never been; `before` is what the clock
// of its start of the tablet had told.
void withdraw(PourState& state, const std::optional<BootClock>& before) {
  const EventRef ref = state.log.size() - 1;
  const Touched touched = withdraw_last_fix(state);
  const Event event = state.log.back().event;
  const std::size_t place = place_in_order(state, state.log.back().when, ref);
  rewind(state, place);
  state.order.erase(state.order.begin() + static_cast<std::ptrdiff_t>(place));
  state.memory.stepped.pop_back();
  take_count_back(state, ref);
  state.log.pop_back();
  const auto known = state.memory.ids.find(event.id.text);
  if (known != state.memory.ids.end() && known->second == ref) state.memory.ids.erase(known);
  if (!state.clock_steps.empty() && state.clock_steps.back().ref == ref) {
    state.clock_steps.pop_back();
  }
  if (event.entry) {
    state.memory.boots.erase(event.entry->boot);
    if (before) state.memory.boots.emplace(event.entry->boot, *before);
  }
  const bool opening = std::find(touched.begin(), touched.end(), EventRef{0}) != touched.end();
  if (opening || !happen_anew(state, touched)) state = *fold(as_entered(state));
}

// A fix must leave its target an event that can be: seen when it has happened anew.
Result<void> admit_fix(PourState& state, const Event& event) {
  const EventRef target = state.memory.ids.at(corrected(event)->text);
  const bool stood = state.log[target].sense != LogEntry::Sense::wrong;
  std::optional<BootClock> before;
  if (event.entry) {
    const auto boot = state.memory.boots.find(event.entry->boot);
    if (boot != state.memory.boots.end()) before = boot->second;
  }
  extend(state, event);
  const LogEntry& fix = state.log.back();
  const LogEntry& fixed = state.log[target];
  const bool spoilt = stood && !fixed.struck && fixed.sense == LogEntry::Sense::wrong;
  if (fix.sense != LogEntry::Sense::wrong && !spoilt) return {};
  Saying why = spoilt ? fixed.why_not : fix.why_not;
  withdraw(state, before);
  return refusal(event, std::move(why));
}

// Before the opening of the pour: all moments are told from another zero.
Result<void> admit_before_all(PourState& state, const Event& event) {
  PourState next = state;
  extend(next, event);
  if (next.log.back().sense == LogEntry::Sense::wrong) {
    return refusal(event, next.log.back().why_not);
  }
  state = std::move(next);
  return {};
}

}  // namespace

Result<void> admit(PourState& state, const Event& event) {
  const EventRef ref = state.log.size();
  if (auto why = misaimed(state, event, ref)) return refusal(event, std::move(*why));
  if (std::holds_alternative<event::Fix>(event.what)) return admit_fix(state, event);
  const LogEntry entry{.event = event,
                       .when = happened(event, read_clock(state.memory, event).stepped)};
  const std::size_t place = place_in_order(state, entry.when, ref);
  if (corrected(event) != nullptr) {
    extend(state, event);
    return {};
  }
  if (place == 0) return admit_before_all(state, event);
  rewind(state, place);
  const auto no = refused(state, entry, ref);
  if (no && no->sense == LogEntry::Sense::wrong) {
    play_on(state);
    return refusal(event, no->why);
  }
  enter(state, event);
  put_in_order(state, ref);
  play_on(state);
  return {};
}

Result<void> admissible(const PourState& state, const Event& event) {
  const EventRef ref = state.log.size();
  const Moment when = happened(event, read_clock(state.memory, event).stepped);
  const bool fix = std::holds_alternative<event::Fix>(event.what);
  if (fix || place_in_order(state, when, ref) < state.order.size()) {
    PourState next = state;
    return admit(next, event);
  }
  if (auto why = misaimed(state, event, ref)) return refusal(event, std::move(*why));
  const auto no = refused(state, {.event = event, .when = when}, ref);
  if (no && no->sense == LogEntry::Sense::wrong) return refusal(event, no->why);
  return {};
}

void set_id(PourState& state, EventId id) {
  LogEntry& entry = state.log.back();
  if (!id.empty()) state.memory.ids.emplace(id.text, state.log.size() - 1);
  entry.event.id = std::move(id);
}

}  // namespace rb
