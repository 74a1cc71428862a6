// Walls greater than any screen: drawn without a stop, and more simply the farther they are.
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <imgui.h>

#include "pour/log/event.h"
#include "tablet.h"

using namespace rb;
using namespace rb::test;

namespace {

// A wall of so many rows of so many motors each, all hung, the lowest row running.
std::vector<Event> great_wall(int lines, int motors) {
  std::string rows, hangs;
  for (int r = 1; r <= lines; ++r) {
    std::string row;
    for (int m = 0; m < motors; ++m) {
      row += fmt::format(R"({}{{"id":"M{}-{}","x":{},"reach_x":0.9,"reach_z":0.75}})",
                         m > 0 ? "," : "", r, m, 60.0 * (m + 0.5) / motors);
    }
    rows += fmt::format(R"({}{{"id":"R{}","z":{},"serves":[{}],"motors":[{}]}})", r > 1 ? "," : "",
                        r, 12.0 / lines * r, r, row);
    hangs += fmt::format(
        R"({{"at":"2026-03-02T05:00:{:02}Z","by":"f","do":"hang","element":"W","row":"R{}","motors":[],"cables":true}})"
        "\n",
        r, r);
  }
  const std::string text =
      fmt::format(
          R"({{"at":"2026-03-02T05:00:00Z","by":"f","do":"pour-open","pour":"P","plan":{{"mixes":[{{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}}],"elements":[{{"id":"W","length":60,"height":12.5,"thickness":0.3,"bays":[30,30],"lifts":[6,12],"rows":[{}]}}]}}}})"
          "\n",
          rows) +
      hangs +
      R"({"at":"2026-03-02T05:10:00Z","by":"f","do":"run","element":"W","row":"R1","vpm":6000})"
      "\n";
  const auto script = read_script(text, "a great wall");
  REQUIRE_MESSAGE(script, (script ? "" : to_text(script.error())));
  return script->events;
}

int corners(int lines, int motors) {
  Tablet tablet(great_wall(lines, motors), *parse_moment("2026-03-02T05:10:30Z"));
  REQUIRE(tablet.state->hangs.size() == static_cast<std::size_t>(lines));
  CHECK(tablet.says("R1"));
  tablet.frame();
  return ImGui::GetDrawData()->TotalVtxCount;
}

}  // namespace

TEST_CASE("a wall of 1,200 motors is drawn by no more than a wall of 300") {
  const int few = corners(30, 10);
  const int many = corners(30, 40);
  CHECK(few > 1000);
  CHECK(many <= few);
}

TEST_CASE("a frame of more corners than one list counts is built before a painter stands") {
  CHECK(corners(45, 25) > 65536);  // just far enough apart for each to be drawn
}
