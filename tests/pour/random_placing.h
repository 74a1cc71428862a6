// Pours as they go wrong: bays that come up apart, rows hung in part, taken down and run at any
// time, concrete hot and cold that sets while everybody waits, holds, forms that move, slips and
// corrections. A test that fails says the seed.
#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "pour/log/event_json.h"

namespace rb {

class RandomPlacing {
 public:
  enum class Shape { wall, column, deck, wall_and_column };
  static constexpr int kShapes = 4;

  explicit RandomPlacing(unsigned seed) : engine_(seed) {
    const int warm = whole(0, 2);
    coldest_ = std::array{3, 14, 28}[static_cast<std::size_t>(warm)];
    const auto shape = static_cast<Shape>(seed % kShapes);
    std::string elements;
    if (shape == Shape::wall || shape == Shape::wall_and_column) elements = wall();
    if (shape == Shape::column || shape == Shape::wall_and_column) {
      elements += (elements.empty() ? "" : ",") + column();
    }
    if (shape == Shape::deck) elements = deck();
    opening = made(
        fmt::format(
            R"("do":"pour-open","pour":"P","plan":{{"mixes":[{{"id":"C","unit_weight":24,"slump":0.12,)"
            R"("initial_set_h":{}}},{{"id":"D","unit_weight":23,"slump":0.18,"initial_set_h":{}}}],)"
            R"("elements":[{}]}})",
            whole(2, 10) * 0.5, whole(2, 16) * 0.5, elements),
        wall_);
  }

  Event next() {
    wall_ += std::chrono::seconds{whole(0, 4) == 0 ? 0 : whole(1, 400)};
    // A breakdown, a truck that does not come, a meal.
    if (whole(0, 24) == 0) wall_ += std::chrono::minutes{whole(30, 400)};
    if (ids_ > 6 && whole(0, 13) == 0) return made(correction(), wall_);
    const int back = whole(0, 15) == 0 ? whole(1, 900) : 0;
    return made(happening(), wall_ - std::chrono::seconds{back});
  }

  int whole(int a, int b) { return std::uniform_int_distribution<int>(a, b)(engine_); }

  Event opening;

 private:
  struct Place {
    std::string id;
    int bays = 1, lifts = 1;
    double step = 0.6;                               // planned height of a lift
    std::vector<std::string> rows{};                 // as they are named in an event
    std::vector<std::vector<std::string>> motors{};  // of each row
    int lift = 0;
    std::vector<double> tops{};
  };

  static std::string motor(const std::string& id, double x, double reach_x, double reach_z) {
    return fmt::format(R"({{"id":"{}","x":{},"reach_x":{},"reach_z":{}}})", id, x, reach_x,
                       reach_z);
  }

  // Reaches differ from motor to motor and end, some of them, at a bay's end.
  double reach_z() { return 0.1 * whole(2, 9); }

  // A row with a motor in the middle of each of some bays.
  std::string row(Place& place, const std::string& id, const char* side, double z,
                  const std::string& lifts, const std::vector<double>& at, double reach_x) {
    std::string motors;
    place.motors.emplace_back();
    for (const double x : at) {
      const std::string name = fmt::format("M{}", ++motors_);
      place.motors.back().push_back(name);
      motors += (motors.empty() ? "" : ",") + motor(name, x, reach_x, reach_z());
    }
    place.rows.push_back(
        fmt::format(R"("element":"{}","row":"{}","side":"{}")", place.id, id, side));
    return fmt::format(R"({{"id":"{}","side":"{}","z":{},"serves":{},"motors":[{}]}})", id, side, z,
                       lifts, motors);
  }

  std::string rating() {
    return whole(0, 2) == 0 ? fmt::format(R"("form_rating_kpa":{},)", whole(20, 60)) : "";
  }
  std::string batter() {
    return whole(0, 2) == 0 ? fmt::format(R"("batter_deg":{},)", whole(1, 15)) : "";
  }

  std::string wall() {
    Place place{.id = "W", .bays = 3, .lifts = 3, .tops = {0, 0, 0}};
    const std::string rows = row(place, "WA", "near", 0.3, "[1,2]", {1, 3, 5}, 1) + "," +
                             row(place, "WB", "near", 0.9, "[1,2,3]", {1, 3}, 1) + "," +
                             row(place, "WC", "near", 1.5, "[2,3]", {1, 3, 5}, 0.9) + "," +
                             row(place, "WD", "far", 0.6, "[1,2]", {2, 5}, 2.1) + "," +
                             row(place, "WE", "far", 1.2, "[2,3]", {5}, 0.8);
    places_.push_back(place);
    return fmt::format(
        R"({{"id":"W","length":6,"height":3,"thickness":0.4,"bays":[2,2,2],{}{})"
        R"("lifts":[0.6,1.2,1.8],"openings":[{{"x":2.5,"z":0.5,"w":0.6,"h":0.5}}],"rows":[{}]}})",
        rating(), batter(), rows);
  }
  std::string column() {
    Place place{.id = "K", .bays = 1, .lifts = 3, .step = 1, .tops = {0}};
    const std::string rows = row(place, "KA", "near", 0.6, "[1,2]", {0.3}, 0.4) + "," +
                             row(place, "KB", "near", 1.5, "[2,3]", {0.3}, 0.4);
    places_.push_back(place);
    return fmt::format(
        R"({{"id":"K","kind":"column","length":0.6,"height":3,"thickness":0.6,"bays":[0.6],{})"
        R"("lifts":[1,2,3],"rows":[{}]}})",
        rating(), rows);
  }
  std::string deck() {
    Place place{.id = "D", .bays = 2, .lifts = 1, .step = 0.3, .tops = {0, 0}};
    const std::string rows = row(place, "DA", "near", 0, "[1]", {1.5}, 1.5) + "," +
                             row(place, "DB", "near", 0, "[1]", {4.5}, 1.5) + "," +
                             row(place, "DC", "near", 0, "[1]", {1.5, 4.5}, 1.5);
    places_.push_back(place);
    return fmt::format(
        R"({{"id":"D","kind":"deck","length":6,"height":4,"thickness":0.3,"bays":[3,3],"lifts":[0.3],)"
        R"("rows":[{}]}})",
        rows);
  }

  std::string ticket() { return fmt::format(R"("ticket":"T{}")", whole(1, std::max(1, trucks_))); }

  std::string hang(const Place& place, std::size_t r) {
    std::string named;
    if (whole(0, 2) == 0) {  // one motor alone, its own or a spare
      const auto& own = place.motors[r];
      named = whole(0, 3) == 0
                  ? R"("M99")"
                  : fmt::format(
                        R"("{}")",
                        own[static_cast<std::size_t>(whole(0, static_cast<int>(own.size()) - 1))]);
    }
    return fmt::format(R"("do":"hang",{},"motors":[{}],"cables":{})", place.rows[r], named,
                       whole(0, 2) > 0);
  }

  std::string top(Place& place) {
    const double most = std::min(place.step * place.lifts + 0.2, place.id == "D" ? 0.3 : 2.9);
    const auto up = [&](double& z) {
      z = std::clamp(z + 0.01 * whole(-4, 28), 0.0, most);
      return fmt::format(R"("height":{})", z);
    };
    if (place.bays > 1 && whole(0, 3) > 0) {
      const int bay = whole(1, place.bays);
      return fmt::format(R"({},"bay":{})", up(place.tops[static_cast<std::size_t>(bay) - 1]), bay);
    }
    const std::string height = up(place.tops.front());
    std::fill(place.tops.begin(), place.tops.end(), place.tops.front());
    return height;
  }

  std::string happening() {
    Place& place =
        places_[static_cast<std::size_t>(whole(0, static_cast<int>(places_.size()) - 1))];
    const auto r = static_cast<std::size_t>(whole(0, static_cast<int>(place.rows.size()) - 1));
    const int what = whole(0, 33);
    if (what < 2 || place.lift == 0) {
      place.lift = std::min(place.lift + 1, place.lifts);
      return fmt::format(R"("do":"lift-start","element":"{}","lift":{})", place.id, place.lift);
    }
    if (what == 2 && place.bays > 1) {
      return fmt::format(R"("do":"bay-start","element":"{}","lift":{},"bay":{})", place.id,
                         place.lift, whole(1, place.bays));
    }
    if (what < 10) return fmt::format(R"("do":"top","element":"{}",{})", place.id, top(place));
    if (what < 11) {
      return fmt::format(R"("do":"lift-end","element":"{}","lift":{},{})", place.id, place.lift,
                         top(place));
    }
    if (what < 17) return hang(place, r);
    if (what < 18) return fmt::format(R"("do":"take-down",{})", place.rows[r]);
    if (what < 21) return fmt::format(R"("do":"run",{},"vpm":6000)", place.rows[r]);
    if (what < 25) return fmt::format(R"("do":"rest",{})", place.rows[r]);
    if (what < 27) {
      return fmt::format(
          R"("do":"truck","ticket":"T{}","mix":"{}","volume":2,"batched":"{}","arrived":"{}")",
          ++trucks_, whole(0, 2) > 0 ? "C" : "D",
          to_text(wall_ - std::chrono::minutes{whole(10, 70)}), to_text(wall_));
    }
    if (what < 29) return fmt::format(R"("do":"discharge",{},"element":"{}")", ticket(), place.id);
    if (what < 30) {
      return fmt::format(R"("do":"test",{},"temp":{})", ticket(), coldest_ + whole(0, 9));
    }
    if (what < 31) return fmt::format(R"("do":"air-temp","temp":{})", coldest_ + whole(-3, 9));
    if (what < 32) return whole(0, 2) == 0 ? R"("do":"hold","reason":"rain")" : R"("do":"resume")";
    if (what < 33) {
      if (whole(0, 2) > 0) return R"("do":"resume")";
      return fmt::format(R"("do":"moved","what":"{}","element":"{}")",
                         whole(0, 1) == 0 ? "form" : "motor", place.id);
    }
    return whole(0, 9) == 0
               ? R"("do":"pour-close")"
               : fmt::format(R"("do":"penetration","mix":"C","mixed":"{}","resistance":3.5)",
                             to_text(wall_ - std::chrono::minutes{whole(30, 300)}));
  }

  std::string correction() {
    const int target = std::max(2, ids_ - whole(0, 12));
    if (whole(0, 1) == 0) {
      return fmt::format(R"("do":"strike","target":"e{}","why":"wrong tap")", target);
    }
    return fmt::format(R"("do":"fix","target":"e{}","set":{},"why":"misread")", target,
                       whole(0, 1) == 0 ? R"({"height":0.4})" : R"({"motors":[]})");
  }

  Event made(const std::string& fields, Moment at) {
    auto event = parse_event(
        fmt::format(R"({{"id":"e{}","at":"{}","by":"f",{}}})", ++ids_, to_text(at), fields),
        "random");
    REQUIRE_MESSAGE(event, to_text(event.error()));
    return *event;
  }

  std::mt19937 engine_;
  Moment wall_ = *parse_moment("2026-03-02T05:00:00.000Z");
  std::vector<Place> places_;
  int coldest_ = 14, ids_ = 0, motors_ = 0, trucks_ = 0;
};

}  // namespace rb
