#include "pour/fold.h"

#include <fmt/format.h>

#include <algorithm>
#include <unordered_map>

#include "pour/event_json.h"
#include "pour/fold_happening.h"

namespace rb {

namespace {

// The wall and the steady clock may drift apart this much between two taps before it is a step.
constexpr Seconds kClockSlack{2};

// Within one start of the tablet the steady clock tells true spans: what the wall clock has stepped
// since the first event of that start is taken out of every later moment.
struct BootClock {
  Entry last;
  Seconds stepped{};
};

class Clocks {
 public:
  // The step to take out of this entry's moment; a new step is put in `found`.
  Seconds step_of(const Entry& entry, std::optional<Seconds>& found) {
    const auto [it, first] = boots_.try_emplace(entry.boot, BootClock{entry, {}});
    BootClock& boot = it->second;
    if (!first) {
      const Seconds step = between(boot.last.wall, entry.wall) - (entry.steady - boot.last.steady);
      if (std::chrono::abs(step) > kClockSlack) {
        boot.stepped += step;
        found = step;
      }
      boot.last = entry;
    }
    return boot.stepped;
  }

 private:
  std::unordered_map<std::string, BootClock> boots_;
};

void mark(LogEntry& entry, LogEntry::Sense sense, std::string why) {
  entry.sense = sense;
  entry.why_not = std::move(why);
}

using Ids = std::unordered_map<std::string, EventRef>;

const EventId* corrected(const Event& event) {
  if (const auto* fix = std::get_if<event::Fix>(&event.what)) return &fix->target;
  if (const auto* strike = std::get_if<event::Strike>(&event.what)) return &strike->target;
  return nullptr;
}

// Why a fix or strike cannot stand, or nothing.
std::optional<std::string> misaimed(const std::vector<LogEntry>& log, const Ids& ids,
                                    EventRef ref) {
  const Event& event = log[ref].event;
  const EventId* target = corrected(event);
  if (target == nullptr) return std::nullopt;
  const auto found = ids.find(target->text);
  if (found == ids.end() || found->second >= ref) {
    return fmt::format("there is no earlier event {} to correct", target->text);
  }
  const Event& aimed = log[found->second].event;
  if (std::holds_alternative<event::PourOpen>(aimed.what) &&
      std::holds_alternative<event::Strike>(event.what)) {
    return "the opening of the pour cannot be struck";
  }
  if (std::holds_alternative<event::Fix>(event.what) && corrected(aimed) != nullptr) {
    return "a correction cannot be changed; strike it and correct anew";
  }
  return std::nullopt;
}

void apply_corrections(PourState& state) {
  auto& log = state.log;
  Ids ids;
  for (EventRef ref = 0; ref < log.size(); ++ref) {
    if (!log[ref].event.id.empty()) ids.emplace(log[ref].event.id.text, ref);
  }
  // A struck strike strikes nothing: the latest is looked at first.
  for (EventRef ref = log.size(); ref-- > 0;) {
    if (auto why = misaimed(log, ids, ref)) {
      mark(log[ref], LogEntry::Sense::wrong, *why);
    } else if (const auto* strike = std::get_if<event::Strike>(&log[ref].event.what);
               strike && !log[ref].struck) {
      log[ids.at(strike->target.text)].struck = true;
    }
  }
  for (EventRef ref = 0; ref < log.size(); ++ref) {
    if (log[ref].struck || log[ref].sense != LogEntry::Sense::counts) continue;
    const EventId* aimed = corrected(log[ref].event);
    if (aimed == nullptr) continue;
    const EventRef target = ids.at(aimed->text);
    Correction correction{target, ref, to_line(log[target].event), {}};
    if (const auto* fix = std::get_if<event::Fix>(&log[ref].event.what)) {
      auto changed = with_fields(log[target].event, fix->set, "the correction");
      if (!changed) {
        mark(log[ref], LogEntry::Sense::wrong, to_text(changed.error()));
        continue;
      }
      if (!log[target].as_entered) log[target].as_entered = log[target].event;
      log[target].event = std::move(*changed);
      correction.after = to_line(log[target].event);
    }
    state.corrections.push_back(std::move(correction));
  }
}

void set_moments(PourState& state) {
  Clocks clocks;
  for (EventRef ref = 0; ref < state.log.size(); ++ref) {
    LogEntry& entry = state.log[ref];
    entry.when = entry.event.at;
    if (!entry.event.entry) continue;
    std::optional<Seconds> found;
    const Seconds step = clocks.step_of(*entry.event.entry, found);
    entry.when = after(entry.event.at, -step);
    if (found) state.clock_steps.push_back({ref, {}, *found});
  }
}

}  // namespace

Result<PourState> fold(std::span<const Event> events) {
  if (events.empty() || !std::holds_alternative<event::PourOpen>(events.front().what)) {
    return fail(Error::Kind::input, "the pour's events", "do not begin with pour-open");
  }
  PourState state;
  state.log.reserve(events.size());
  for (const Event& event : events) state.log.push_back({.event = event});
  apply_corrections(state);
  set_moments(state);

  const auto& open = std::get<event::PourOpen>(state.log.front().event.what);
  state.pour = open.pour;
  state.plan = open.plan;
  state.elements.resize(state.plan->elements.size());
  for (std::size_t i = 0; i < state.elements.size(); ++i) {
    state.elements[i].tops.resize(state.plan->elements[i].bays.size());
  }
  state.order.resize(state.log.size());
  for (EventRef ref = 0; ref < state.order.size(); ++ref) state.order[ref] = ref;
  std::stable_sort(state.order.begin(), state.order.end(),
                   [&](EventRef a, EventRef b) { return state.log[a].when < state.log[b].when; });
  state.zero = state.log[state.order.front()].when;
  for (ClockStep& step : state.clock_steps) step.at = state.clock(state.log[step.ref].when);
  for (const EventRef ref : state.order) {
    if (!state.log[ref].struck && state.log[ref].sense == LogEntry::Sense::counts) {
      apply_happening(state, ref);
    }
  }
  return state;
}

namespace {

// The moment of an event entered after all the others, when its clock has not stepped since the
// entry before; nothing when the whole log must be looked at again.
std::optional<Moment> moment_of_next(const PourState& state, const Event& event) {
  if (!event.entry) return event.at;
  for (auto past = state.log.rbegin(); past != state.log.rend(); ++past) {
    const auto& entry = past->event.entry;
    if (!entry || entry->boot != event.entry->boot) continue;
    const Seconds step =
        between(entry->wall, event.entry->wall) - (event.entry->steady - entry->steady);
    if (std::chrono::abs(step) > kClockSlack) return std::nullopt;
    return event.at - (past->event.at - past->when);
  }
  return event.at;
}

}  // namespace

void extend(PourState& state, const Event& event) {
  const auto when = moment_of_next(state, event);
  if (corrected(event) == nullptr && when && *when >= state.log[state.order.back()].when) {
    const EventRef ref = state.log.size();
    state.log.push_back({.event = event});
    state.log.back().when = *when;
    state.order.push_back(ref);
    apply_happening(state, ref);
    return;
  }
  std::vector<Event> events;
  events.reserve(state.log.size() + 1);
  for (const LogEntry& entry : state.log) {
    events.push_back(entry.as_entered ? *entry.as_entered : entry.event);
  }
  events.push_back(event);
  state = *fold(events);
}

Result<void> admissible(const PourState& state, const Event& event) {
  PourState next = state;
  extend(next, event);
  const LogEntry* spoilt = &next.log.back();
  // A correction must leave its target an event that can be.
  for (const Correction& correction : next.corrections) {
    if (correction.made_by + 1 != next.log.size() || next.log[correction.target].struck) continue;
    const bool stood = state.log[correction.target].sense != LogEntry::Sense::wrong;
    if (stood && next.log[correction.target].sense == LogEntry::Sense::wrong) {
      spoilt = &next.log[correction.target];
    }
  }
  if (spoilt->sense != LogEntry::Sense::wrong) return {};
  return fail(Error::Kind::input, kind_text(event.what), spoilt->why_not);
}

}  // namespace rb
