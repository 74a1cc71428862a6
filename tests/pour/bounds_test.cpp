// How much a line, a text and a plan may hold: just below, at and just above each bound.
#include <doctest/doctest.h>

#include <functional>

#include "pour/log/event_json.h"
#include "pour/log/script.h"
#include "pour/plan/plan_json.h"

using namespace rb;

namespace {

std::string note_line(const std::string& text, const std::string& more = {}) {
  return R"({"at":"2026-03-02T05:00:00Z","by":"f1","do":"note","text":")" + text + '"' + more + '}';
}

std::string wall(const std::string& id, const std::string& more = {}) {
  return R"({"id":")" + id + R"(","length":4,"height":2,"thickness":0.2)" + more + '}';
}

std::string plan_text(const std::string& elements, const std::string& more = {}) {
  return R"({"mixes":[{"id":"C1","unit_weight":24,"slump":0.1,"initial_set_h":5}],"elements":[)" +
         elements + ']' + more + '}';
}

std::string list_of(std::size_t count, const std::function<std::string(std::size_t)>& item) {
  std::string text;
  for (std::size_t i = 0; i < count; ++i) text += (i == 0 ? "" : ",") + item(i);
  return text;
}

std::string words(const Result<Event>& refused) {
  REQUIRE_FALSE(refused);
  CHECK(refused.error().kind == Error::Kind::input);
  return to_text(refused.error());
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a text may have 2,000 characters, however many bytes they are") {
  CHECK(parse_event(note_line(std::string(1999, 'x')), "t"));
  CHECK(parse_event(note_line(std::string(2000, 'x')), "t"));
  std::string accented;
  for (int i = 0; i < 2000; ++i) accented += "\u00E9";
  CHECK(parse_event(note_line(accented), "t"));
  const auto text = words(parse_event(note_line(std::string(2001, 'x')), "line 3"));
  CHECK(says(text, "line 3, field text"));
  CHECK(says(text, "2001"));
  CHECK(says(text, "2000"));
  CHECK(says(words(parse_event(note_line(accented + "x"), "t")), "2001"));
}

TEST_CASE("an id may have 100 bytes") {
  const auto by = [](std::size_t n) {
    return R"({"at":"2026-03-02T05:00:00Z","by":")" + std::string(n, 'p') +
           R"(","do":"pour-close"})";
  };
  CHECK(parse_event(by(99), "t"));
  CHECK(parse_event(by(100), "t"));
  CHECK(says(words(parse_event(by(101), "t")), "field by"));
  const auto hang = [](std::size_t n) {
    return R"({"at":"2026-03-02T05:00:00Z","by":"f","do":"hang","element":"W","row":"R","cables":true,"motors":["M",")" +
           std::string(n, 'm') + R"("]})";
  };
  CHECK(parse_event(hang(100), "t"));
  CHECK(says(words(parse_event(hang(101), "t")), "field motors[2]"));
  CHECK(parse_plan(plan_text(wall(std::string(100, 'e'))), "p"));
  const auto plan = parse_plan(plan_text(wall(std::string(101, 'e'))), "p");
  REQUIRE_FALSE(plan);
  CHECK(says(to_text(plan.error()), "elements[1], field id"));
}

TEST_CASE("fields this version does not know may hold 8 KiB, in a line and in a plan") {
  const auto extra = [](std::size_t bytes) {  // {"x":"..."} is 8 more than its text
    return R"(,"x":")" + std::string(bytes - 8, 'y') + '"';
  };
  CHECK(parse_event(note_line("n", extra(8191)), "t"));
  CHECK(parse_event(note_line("n", extra(8192)), "t"));
  CHECK(says(words(parse_event(note_line("n", extra(8193)), "t")), "field x"));
  CHECK(parse_plan(plan_text(wall("W"), extra(8192)), "p"));
  const auto plan = parse_plan(plan_text(wall("W"), extra(8193)), "p");
  REQUIRE_FALSE(plan);
  CHECK(says(to_text(plan.error()), "field x"));
}

TEST_CASE("a line may have 16 KiB, one that opens a pour 1 MiB, spaces counted") {
  const auto filled = [](std::string line, std::size_t bytes) {
    line.pop_back();
    return line + std::string(bytes - line.size() - 1, ' ') + '}';
  };
  CHECK(parse_event(filled(note_line("n"), 16384), "t"));
  CHECK(says(words(parse_event(filled(note_line("n"), 16385), "line 9")), "line 9"));
  const std::string open =
      R"({"at":"2026-03-02T05:00:00Z","by":"f","do":"pour-open","pour":"P","plan":)" +
      plan_text(wall("W")) + '}';
  CHECK(parse_event(filled(open, 1 << 20), "t"));
  CHECK(says(words(parse_event(filled(open, (1 << 20) + 1), "t")), "1048576"));
}

TEST_CASE("lists of a plan have bounds, named by their field") {
  const auto refused = [](const std::string& plan, const std::string& field) {
    const auto read = parse_plan(plan, "p");
    REQUIRE_FALSE(read);
    CAPTURE(to_text(read.error()));
    CHECK(says(to_text(read.error()), "field " + field));
  };
  const auto walls = [](std::size_t n) {
    return plan_text(list_of(n, [](std::size_t i) { return wall("W" + std::to_string(i)); }));
  };
  CHECK(parse_plan(walls(200), "p"));
  refused(walls(201), "elements");
  const auto people = [](std::size_t n) {
    return plan_text(wall("W"), R"(,"people":[)" + list_of(n, [](std::size_t i) {
                                  return R"({"id":"p)" + std::to_string(i) + R"("})";
                                }) + ']');
  };
  CHECK(parse_plan(people(200), "p"));
  refused(people(201), "people");
  const auto rows = [](std::size_t n) {
    return plan_text(
        wall("W", R"(,"rows":[)" + list_of(n, [](std::size_t i) {
                    return R"({"id":"R)" + std::to_string(i) +
                           R"(","z":1,"motors":[{"id":"M","x":1,"reach_x":1,"reach_z":1}]})";
                  }) + ']'));
  };
  CHECK(parse_plan(rows(200), "p"));
  refused(rows(201), "rows");
  const auto bays = [](std::size_t n) {
    return R"({"mixes":[{"id":"C1","unit_weight":24,"slump":0.1,"initial_set_h":5}],"elements":[{"id":"W","length":)" +
           std::to_string(n) + R"(,"height":2,"thickness":0.2,"bays":[)" +
           list_of(n, [](std::size_t) { return std::string{"1"}; }) + "]}]}";
  };
  CHECK(parse_plan(bays(500), "p"));
  refused(bays(501), "length");
}

TEST_CASE("a correction cannot bring in a text that is too long") {
  const auto fix = [](std::size_t n) {
    return R"({"at":"2026-03-02T05:00:00Z","by":"f","do":"fix","target":"a","why":"w","set":{"text":")" +
           std::string(n, 'x') + R"("}})";
  };
  CHECK(parse_event(fix(2000), "t"));
  CHECK(says(words(parse_event(fix(2001), "t")), "field set.text"));
}

TEST_CASE("what a book holds is read whatever its size") {
  CHECK(parse_event(note_line(std::string(50'000, 'x')), "t", Bounds::as_it_is));
}

TEST_CASE("a message quotes no more than the beginning of what it refuses") {
  const auto text = words(parse_event(R"({"at":"2026-03-02T05:00:00Z","by":[")" +
                                          std::string(9000, 'x') + R"("],"do":"pour-close"})",
                                      "t"));
  CHECK(text.size() < 300);
}
