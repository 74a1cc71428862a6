// The life of a book in small, told so that a test can say afterwards what must be in it.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "../store/samples.h"
#include "pour/log/event.h"

namespace rb::faults {

using samples::got;

inline const PourId kPour{"N1"}, kScriptPour{"N2"};

inline std::string line_of(Event event) {
  event.id = EventId{};
  event.entry.reset();
  return to_line(event);
}

struct Life {
  bool made = false;                ///< the book was acknowledged
  bool closed = false;              ///< it was closed and opened again
  std::vector<Event> acknowledged;  ///< of kPour, in order
  std::vector<std::string> tried;   ///< lines of kPour, acknowledged or not
  bool script_acknowledged = false;
};

/// Tries an append once and keeps account of it.
inline bool tap(Logbook& book, Life& life, const Event& event, int minute) {
  life.tried.push_back(line_of(event));
  auto kept = book.append(kPour, event, samples::entry_at(minute));
  if (kept) life.acknowledged.push_back(std::move(*kept));
  return kept.has_value();
}

/// What must hold of the book at `path` after any fault: opens it, looks, and adds to it.
inline void check_survival(const std::filesystem::path& path, const Life& life) {
  if (!std::filesystem::exists(path)) {
    CHECK_FALSE(life.made);
    CHECK(got(Logbook::create(path)).writable());  // what was left does not stand in the way
    return;
  }
  auto book = got(Logbook::open(path, Access::write));
  const auto report = got(book.verify());  // chain, gaps, triggers, integrity_check
  if (!report.sound()) FAIL_CHECK(report.faults[0]);
  const auto events = got(book.events(kPour));
  REQUIRE(events.size() >= life.acknowledged.size());
  auto next = events.begin();
  for (const auto& kept : life.acknowledged) {  // every acknowledged event, in order
    next = std::find(next, events.end(), kept);
    REQUIRE(next != events.end());
  }
  auto tried = life.tried;
  for (const auto& event : events) {  // and nothing that was not tried, none twice, all whole
    const auto line = std::find(tried.begin(), tried.end(), line_of(event));
    REQUIRE(line != tried.end());
    tried.erase(line);
  }
  const auto script = got(book.events(kScriptPour)).size();
  CHECK((script == 10 || (script == 0 && !life.script_acknowledged)));
  const PourId fresh{"after"};
  got(book.append(fresh, samples::open_event(fresh.text), samples::entry_at(600)));
  CHECK(got(book.verify()).sound());
}

}  // namespace rb::faults
