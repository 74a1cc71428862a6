// A state that grows event by event is the state folded from all of them, whatever is entered:
// events of an earlier moment, fixes, strikes, strikes of strikes, clocks that step.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <random>

#include "pour/event_json.h"
#include "pour/fold.h"

using namespace rb;

namespace {

// Taps of hands that err on a tablet whose clock is set now and then.
class RandomTaps {
 public:
  explicit RandomTaps(unsigned seed) : engine_(seed) {
    opening = made(
        R"("do":"pour-open","pour":"P","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}],
"elements":[{"id":"W","length":4,"height":3,"thickness":0.3,"bays":[2,2],"lifts":[0.5,1,1.5],"rows":[
{"id":"A","z":0.3,"serves":[1,2],"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.5},{"id":"M2","x":3,"reach_x":1,"reach_z":0.5}]},
{"id":"B","z":1.1,"serves":[2,3],"motors":[{"id":"M3","x":1,"reach_x":1,"reach_z":0.5}]}]},
{"id":"K","kind":"column","length":0.6,"height":3,"thickness":0.6,"bays":[0.6],"lifts":[1,2],"rows":[{"id":"A","z":0.6,"serves":[1],"motors":[{"id":"M6","x":0.3,"reach_x":0.4,"reach_z":0.8}]}]}]})",
        at_);
  }

  Event next() {
    tick();
    const int back = whole(0, 5) == 0 ? whole(0, 3000) : 0;
    const Moment at = wall_ - std::chrono::seconds{back};
    if (ids_ > 4 && whole(0, 4) == 0) return made(correction(), wall_);
    return made(whole(0, 40) == 0 ? nonsense() : happening(), at);
  }

  Event opening;

 private:
  int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(engine_); }
  template <std::size_t N>
  const char* one_of(const char* const (&of)[N]) {
    return of[static_cast<std::size_t>(whole(0, static_cast<int>(N) - 1))];
  }

  void tick() {
    const auto gone = std::chrono::milliseconds{whole(0, 3) == 0 ? 0 : whole(200, 240000)};
    wall_ += gone;
    steady_ += gone;
    if (whole(0, 25) == 0) wall_ += std::chrono::milliseconds{whole(-900000, 900000)};
    if (whole(0, 60) == 0) {
      boot_ = fmt::format("boot{}", whole(1, 3));
      steady_ = Seconds{static_cast<double>(whole(0, 1000))};
    }
  }

  std::string row() {
    return one_of(
        {R"("element":"W","row":"A")", R"("element":"W","row":"B")", R"("element":"K","row":"A")"});
  }
  std::string lift() {
    return fmt::format(R"("element":"{}","lift":{})", one_of({"W", "W", "K"}), whole(1, 4));
  }
  std::string top() {
    return fmt::format(R"("height":{}{})", whole(0, 320) * 0.01,
                       whole(0, 2) == 0 ? fmt::format(R"(,"bay":{})", whole(1, 2)) : "");
  }
  std::string ticket() { return fmt::format(R"("ticket":"T{}")", whole(1, 9)); }

  std::string happening() {
    switch (whole(0, 21)) {
      case 0:
        return R"("do":"ready","item":"form","ok":true)";
      case 1:
        return fmt::format(R"("do":"hang",{},"motors":["M1"],"cables":{})", row(),
                           whole(0, 1) == 0);
      case 2:
        return fmt::format(R"("do":"take-down",{})", row());
      case 3:
        return fmt::format(R"("do":"lift-start",{})", lift());
      case 4:
      case 5:
        return fmt::format(R"("do":"top","element":"{}",{})", one_of({"W", "K"}), top());
      case 6:
        return fmt::format(R"("do":"lift-end",{},{})", lift(), top());
      case 7:
      case 8:
        return fmt::format(R"("do":"run",{},"vpm":{})", row(), whole(20, 70) * 100);
      case 9:
      case 10:
        return fmt::format(R"("do":"rest",{})", row());
      case 11:
        return fmt::format(
            R"("do":"insert",{},"bay":1,"group":3,"spacing":0.3,"seconds":10,"depth_below":0.2)",
            lift());
      case 12:
        return fmt::format(R"("do":"truck",{},"mix":"{}","volume":2,"batched":"{}","arrived":"{}")",
                           ticket(), one_of({"C", "C", "D"}),
                           to_text(wall_ - std::chrono::minutes{40}), to_text(wall_));
      case 13:
        return fmt::format(R"("do":"discharge",{},"element":"W")", ticket());
      case 14:
        return fmt::format(R"("do":"discharge",{},"ended":"{}")", ticket(),
                           to_text(wall_ + std::chrono::seconds{whole(-200, 200)}));
      case 15:
        return fmt::format(R"("do":"test",{},"temp":{})", ticket(), whole(5, 35));
      case 16:
        return R"("do":"air-temp","temp":12)";
      case 17:
        return one_of({R"("do":"hold","reason":"rain")", R"("do":"resume")"});
      case 18:
        return one_of({R"("do":"note","text":"seen","element":"W")",
                       R"("do":"strip","element":"W")",
                       R"("do":"sign","role":"foreman","verdict":"accepted")"});
      case 19:
        blemish_ = ids_ + 1;
        return R"("do":"blemish","element":"W","kind":"honeycomb","x":1,"z":1,"w":0.1,"h":0.1)";
      case 20:
        return fmt::format(R"("do":"repair","target":"e{}","note":"filled")",
                           whole(0, 1) == 0 ? blemish_ : whole(1, ids_ + 1));
      default:
        if (whole(0, 6) == 0) return R"("do":"pour-close")";
        return fmt::format(R"("do":"penetration","mix":"C","mixed":"{}","resistance":3.5)",
                           to_text(wall_ - std::chrono::seconds{whole(-60, 9000)}));
    }
  }

  std::string nonsense() {
    return one_of({R"("do":"run","element":"X","row":"A")",
                   R"("do":"rest","element":"W","row":"Z")",
                   R"("do":"top","element":"W","height":99)",
                   R"("do":"top","element":"W","height":1,"bay":7)",
                   R"("do":"blemish","element":"W","kind":"void","x":9,"z":1,"w":1,"h":1)"});
  }

  // Latest events are corrected most; some targets do not exist, some are corrections themselves.
  std::string correction() {
    const int target = whole(0, 3) > 0 ? std::max(1, ids_ - whole(0, 6)) : whole(1, ids_ + 1);
    if (whole(0, 1) == 0) {
      return fmt::format(R"("do":"strike","target":"e{}","why":"wrong tap")", target);
    }
    const std::string set =
        whole(0, 1) == 0
            ? fmt::format(R"({{"at":"{}"}})", to_text(wall_ - std::chrono::seconds{whole(0, 4000)}))
            : std::string{one_of({R"({"height":0.4})", R"({"height":99})", R"({"row":"B"})",
                                  R"({"element":"X"})", R"({"lift":2})", R"({"temp":21})",
                                  R"({"by":"g"})", R"({"do":"rest"})", R"({"vpm":5000})"})};
    return fmt::format(R"("do":"fix","target":"e{}","set":{},"why":"misread")", target, set);
  }

  Event made(const std::string& fields, Moment at) {
    auto event = parse_event(
        fmt::format(R"({{"id":"e{}","at":"{}","by":"f",{}}})", ++ids_, to_text(at), fields),
        "random");
    REQUIRE_MESSAGE(event, to_text(event.error()));
    if (whole(0, 9) > 0) event->entry = Entry{wall_, steady_, boot_};
    return *event;
  }

  std::mt19937 engine_;
  Moment at_ = *parse_moment("2026-03-02T22:00:00.000Z");
  Moment wall_ = at_ + std::chrono::hours{1};
  Seconds steady_{100};
  std::string boot_ = "boot1";
  int ids_ = 0, blemish_ = 1;
};

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
