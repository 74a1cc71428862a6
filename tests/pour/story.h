// A pour told line by line, for tests.
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"

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
  /// As it folds, whether or not all of it counts.
  [[nodiscard]] PourState folded() const {
    auto made = fold(events);
    REQUIRE(made);
    return *made;
  }
  /// The same, where every line must count.
  [[nodiscard]] PourState state() const {
    PourState made = folded();
    for (const LogEntry& entry : made.log) {
      CAPTURE(entry.why_not.text());
      CHECK(entry.sense != LogEntry::Sense::wrong);
    }
    return made;
  }
  std::vector<Event> events;
};

}  // namespace rb
