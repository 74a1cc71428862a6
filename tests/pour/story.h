// A pour told line by line, for tests.
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "pour/event_json.h"
#include "pour/fold.h"

namespace rb {

class StoryLines {
 public:
  explicit StoryLines(const std::string& open) { add(open); }
  StoryLines& add(const std::string& line) {
    auto event = parse_event(line, "test");
    REQUIRE_MESSAGE(event, (event ? std::string{} : to_text(event.error())));
    if (event->id.empty()) event->id = EventId{"e" + std::to_string(events.size())};
    events.push_back(*event);
    return *this;
  }
  /// `what` is the rest of the line: "do":"top",...
  StoryLines& at(const char* clock, const std::string& what) {
    return add(std::string{R"({"by":"f1","at":"2026-03-02T)"} + clock + R"(Z",)" + what + "}");
  }
  [[nodiscard]] PourState state() const {
    auto folded = fold(events);
    REQUIRE(folded);
    for (const LogEntry& entry : folded->log) {
      CAPTURE(entry.why_not);
      CHECK(entry.sense != LogEntry::Sense::wrong);
    }
    return *folded;
  }
  std::vector<Event> events;
};

}  // namespace rb
