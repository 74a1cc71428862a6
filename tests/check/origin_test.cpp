// from-script, entered-before, kept-late: what was not tapped as it happened.
#include "pour/log/origin.h"
#include "pour/log/event.h"

#include <doctest/doctest.h>

#include "pour_text.h"

using namespace rb;
using namespace rb::test;

namespace {

// Entered so many seconds after the opening, kept `after` later; "" for a boot of the tablet.
void enter(Event& event, double wall, std::optional<double> later, const char* boot = "b1") {
  const Moment opened = *parse_moment("2026-03-02T05:00:00.000Z");
  event.entry = Entry{after(opened, seconds(wall)), seconds(1000 + wall), boot};
  if (later) event.entry->kept = after(event.entry->wall, seconds(*later));
}

Pour noted(double at, double entered, double later) {
  Pour pour;
  pour.at(at, R"("do":"note","text":"n")");
  pour.in_book = [=](std::vector<Event>& events) {
    enter(events[0], 0, 0);
    enter(events[1], entered, later);
  };
  return pour;
}

}  // namespace

TEST_CASE("an event may carry a time up to 5 s after its entry, not more") {
  CHECK_FALSE(noted(100, 200, 0).checked().has("entered-before"));
  CHECK_FALSE(noted(105, 100, 0).checked().has("entered-before"));
  const Finding f = noted(105.001, 100, 0).checked().only("entered-before");
  CHECK(f.severity == Severity::note);
  CHECK(f.measured->si == about(5.001));
  CHECK(f.limit->si == 5.);
  CHECK(f.ref == EventRef{1});
}

TEST_CASE("a time set by a correction is held against the correction's entry") {
  const auto fixed = [](double new_at, double fix_entered) {
    Pour pour;
    pour.at(100, R"("do":"note","text":"n","id":"a")");
    pour.at(400,
            R"("do":"fix","target":"a","why":"w","set":{"at":")" + pour.moment(new_at) + R"("})");
    pour.in_book = [=](std::vector<Event>& events) {
      enter(events[0], 0, 0);
      enter(events[1], 100, 0);
      enter(events[2], fix_entered, 0);
    };
    return pour.checked();
  };
  CHECK_FALSE(fixed(300, 400).has("entered-before"));
  CHECK_FALSE(fixed(405, 400).has("entered-before"));
  CHECK(fixed(406, 400).has("entered-before"));
}

TEST_CASE("an event may wait 2 min for the disk, not more, and is not kept before it is entered") {
  CHECK_FALSE(noted(100, 100, 0).checked().has("kept-late"));
  CHECK_FALSE(noted(100, 100, 120).checked().has("kept-late"));
  const Finding late = noted(100, 100, 120.001).checked().only("kept-late");
  CHECK(late.severity == Severity::note);
  CHECK(late.measured->si == about(120.001));
  CHECK(late.limit->si == 120.);
  const Finding days = noted(100, 100, 3 * 86400.0).checked().only("kept-late");
  CHECK(days.measured->si == about(3 * 86400.0));
  const Checked seen = noted(100, 100, 3 * 86400.0).checked();
  CHECK(sentence(days, *seen.state.plan, kTerminal).ends_with("3 d 0 h later"));
  CHECK_FALSE(noted(100, 100, -5).checked().has("kept-late"));
  CHECK(noted(100, 100, -5.001).checked().has("kept-late"));
}

TEST_CASE("a pour replayed whole has none of them, and says where it came from") {
  Pour pour;
  pour.at(100, R"("do":"note","text":"n")");
  SUBCASE("from a script without entries") {
    pour.in_book = [](std::vector<Event>& events) {
      for (Event& event : events) enter(event, 50, 0, kScriptBoot);
    };
  }
  SUBCASE("from a script that tells its entries") {
    pour.in_book = [](std::vector<Event>& events) {
      enter(events[0], 0, 86400);
      enter(events[1], 100, 86400 - 100);  // in the same go
    };
  }
  const Checked seen = pour.checked();
  for (const char* rule : {"from-script", "entered-before", "kept-late"}) {
    CAPTURE(std::string{rule});
    CHECK_FALSE(seen.has(rule));
  }
  CHECK(origin_of(seen.state) == Origin{2, 0});
  CHECK(to_text(seen.state, seen.report).find("2 of 2 events were brought in from a script") !=
        std::string::npos);
}

TEST_CASE("a tapped pour has nothing from a script") {
  const Checked seen = noted(100, 100, 0).checked();
  CHECK(origin_of(seen.state) == Origin{0, 2});
  CHECK_FALSE(seen.has("from-script"));
  CHECK(to_text(seen.state, seen.report).find("script") == std::string::npos);
}

TEST_CASE("taps that follow a replayed pour are told apart from what was brought in") {
  Pour pour;
  pour.at(100, R"("do":"note","text":"n")").at(90000, R"("do":"note","text":"tapped")");
  bool told = false;
  SUBCASE("whose script told no entries") {
    pour.in_book = [](std::vector<Event>& events) {
      enter(events[0], 86400, 0, kScriptBoot);
      enter(events[1], 86400, 0, kScriptBoot);
      enter(events[2], 90000, 0);
    };
  }
  SUBCASE("whose script told its entries") {
    told = true;
    pour.in_book = [](std::vector<Event>& events) {
      enter(events[0], 0, 86400);
      enter(events[1], 100, 86400 - 100);
      enter(events[2], 90000, 0);
    };
  }
  const Checked seen = pour.checked();
  CAPTURE(told);
  CHECK(origin_of(seen.state) == Origin{2, 1});
  const Finding f = seen.only("from-script");
  CHECK(f.severity == Severity::note);
  CHECK(sentence(f, *seen.state.plan, kTerminal).find("2 of 3 events") != std::string::npos);
  CHECK(f.ref == EventRef{0});
  CHECK_FALSE(seen.has("kept-late"));
}

TEST_CASE("a line slipped in under an earlier time is told, though its entry looks right") {
  Pour pour;
  pour.at(100, R"("do":"note","text":"slipped in")").at(200, R"("do":"note","text":"tapped")");
  pour.in_book = [](std::vector<Event>& events) {
    enter(events[0], 0, 0);
    enter(events[1], 100, 3 * 86400.0);
    enter(events[2], 200, 0);
  };
  CHECK(pour.checked().only("kept-late").ref == EventRef{1});
}
