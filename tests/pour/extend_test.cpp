// A state that grows event by event is the state folded from all of them, whatever is entered:
// events of an earlier moment, fixes, strikes, strikes of strikes, clocks that step.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "random_taps.h"

using namespace rb;

namespace {

void same(const PourState& a, const PourState& b) {
  REQUIRE(a.log.size() == b.log.size());
  bool alike = true;  // in what the comparison of states leaves out
  for (EventRef ref = 0; ref < a.log.size(); ++ref) {
    alike = alike && a.log[ref].event.id == b.log[ref].event.id &&
            a.log[ref].as_entered == b.log[ref].as_entered;
  }
  REQUIRE(alike);
  REQUIRE(a.order == b.order);
  REQUIRE(a == b);
}

// What admit() stands for, worked out the long way.
bool may_be_entered(const std::vector<Event>& events, const Event& event) {
  const PourState before = *fold(events);
  std::vector<Event> all = events;
  all.push_back(event);
  const PourState next = *fold(all);
  if (next.log.back().sense == LogEntry::Sense::wrong) return false;
  for (const Correction& correction : next.corrections) {
    if (correction.made_by + 1 != next.log.size() || next.log[correction.target].struck) continue;
    const bool stood = before.log[correction.target].sense != LogEntry::Sense::wrong;
    if (stood && next.log[correction.target].sense == LogEntry::Sense::wrong) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("a state grown by whatever is entered is the state folded from it all") {
  std::size_t wrong = 0, struck = 0, corrections = 0, steps = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    RandomTaps taps(seed);
    std::vector<Event> events{taps.opening};
    PourState grown = *fold(events);
    for (int i = 0; i < 90; ++i) {
      CAPTURE(i);
      events.push_back(taps.next());
      extend(grown, events.back());
      same(grown, *fold(events));
    }
    for (const LogEntry& entry : grown.log) {
      wrong += entry.sense == LogEntry::Sense::wrong ? 1 : 0;
      struck += entry.struck ? 1 : 0;
    }
    corrections += grown.corrections.size();
    steps += grown.clock_steps.size();
  }
  CHECK(wrong > 250);
  CHECK(struck > 250);
  CHECK(corrections > 250);
  CHECK(steps > 100);
}

TEST_CASE("what is admitted is in the state, and what is refused leaves it as it was") {
  std::size_t admitted = 0, refused = 0;
  for (unsigned seed = 1001; seed <= 1040; ++seed) {
    CAPTURE(seed);
    RandomTaps taps(seed);
    std::vector<Event> events{taps.opening};
    PourState state = *fold(events);
    for (int i = 0; i < 70; ++i) {
      CAPTURE(i);
      const Event event = taps.next();
      const bool may = may_be_entered(events, event);
      REQUIRE(admissible(state, event).has_value() == may);
      REQUIRE(admit(state, event).has_value() == may);
      if (may) events.push_back(event);
      (may ? admitted : refused) += 1;
      same(state, *fold(events));
    }
  }
  CHECK(admitted > 1000);
  CHECK(refused > 150);
}

TEST_CASE("an event admitted before the book gave it an id can be corrected by that id") {
  RandomTaps taps(1);
  PourState state = *fold(std::vector<Event>{taps.opening});
  Event note = *parse_event(
      R"({"at":"2026-03-02T22:30:00.000Z","by":"f","do":"note","text":"seen"})", "note");
  REQUIRE(admit(state, note));
  set_id(state, EventId{"n1"});
  note.id = EventId{"n1"};
  const Event strike = *parse_event(
      R"({"id":"n2","at":"2026-03-02T22:31:00.000Z","by":"f","do":"strike","target":"n1","why":"no"})",
      "strike");
  REQUIRE(admit(state, strike));
  CHECK(state.notes.empty());
  same(state, *fold(std::vector<Event>{taps.opening, note, strike}));
}

TEST_CASE("a correction aimed at an event that is lost can itself be struck") {
  const auto made = [](const char* line) { return *parse_event(line, "line"); };
  std::vector<Event> events{
      RandomTaps(1).opening,
      made(
          R"({"id":"s1","at":"2026-03-02T22:31:00.000Z","by":"f","do":"strike","target":"lost","why":"no"})")};
  PourState state = *fold(events);
  events.push_back(made(
      R"({"id":"s2","at":"2026-03-02T22:32:00.000Z","by":"f","do":"strike","target":"s1","why":"lost"})"));
  extend(state, events.back());
  CHECK(state.log[1].struck);
  same(state, *fold(events));
}
