// Events as hands enter them that err. A test that fails says the seed.
#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <string>

#include "pour/log/event_json.h"

namespace rb {

inline constexpr const char* kTwoElements =
    R"({"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5,"strength_mpa":30}],
"elements":[{"id":"W","length":4,"height":3,"thickness":0.3,"strip_strength_mpa":5,"strength_curve":[[0.5,1],[3,9]],"cure_start_within_s":900,"cure_for_s":3600,"bays":[2,2],"lifts":[0.5,1,1.5],"rows":[
{"id":"A","z":0.3,"serves":[1,2],"motors":[{"id":"M1","x":1,"reach_x":1,"reach_z":0.5},{"id":"M2","x":3,"reach_x":1,"reach_z":0.5}]},
{"id":"B","z":1.1,"serves":[2,3],"motors":[{"id":"M3","x":1,"reach_x":1,"reach_z":0.5}]}]},
{"id":"K","kind":"column","length":0.6,"height":3,"thickness":0.6,"bays":[0.6],"lifts":[1,2],"rows":[{"id":"A","z":0.6,"serves":[1],"motors":[{"id":"M6","x":0.3,"reach_x":0.4,"reach_z":0.8}]}]}],
"power":[{"id":"I","volts":42,"max_amps":12,"motors":["M1","M3"],"trunk":{"mm2":1,"length":20},"generator":{"kva":1},"internal":{"heads":1,"amps":2}},
{"id":"J","volts":42,"max_amps":12,"motors":["M2","M6"],"cable":{"mm2":1,"length":20},"generator":{"kva":1}}],
"motor_type":{"amps":7,"force_kn":4,"vpm_max":6000}})";

// Taps of hands that err on a tablet whose clock is set now and then.
class RandomTaps {
 public:
  explicit RandomTaps(unsigned seed, const char* plan = kTwoElements) : engine_(seed) {
    opening = made(std::string{R"("do":"pour-open","pour":"P","plan":)"} + plan, at_);
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
    switch (whole(0, 31)) {
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
        if (whole(0, 1) == 0) {
          return fmt::format(R"("do":"bay-start",{},"bay":{})", lift(), whole(1, 2));
        }
        [[fallthrough]];
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
        return fmt::format(R"("do":"discharge",{},"element":"{}"{})", ticket(),
                           one_of({"W", "W", "K"}), one_of({"", "", R"(,"volume":0.8)"}));
      case 14:
        return fmt::format(R"("do":"discharge",{},"ended":"{}")", ticket(),
                           to_text(wall_ + std::chrono::seconds{whole(-200, 200)}));
      case 15:
        if (whole(0, 1) == 0) {
          return fmt::format(R"("do":"test",{},"specimens":["s{}"])", ticket(), whole(1, 9));
        }
        return fmt::format(R"("do":"test",{},"temp":{})", ticket(), whole(5, 35));
      case 16:
        if (whole(0, 1) == 0) {
          return fmt::format(R"("do":"air-temp","temp":{},"humidity":{},"wind":6)", whole(5, 35),
                             whole(10, 90));
        }
        return R"("do":"air-temp","temp":12)";
      case 17:
        return one_of({R"("do":"hold","reason":"rain")", R"("do":"resume")"});
      case 18:
        return one_of({R"("do":"note","text":"seen","element":"W")",
                       R"("do":"strip","element":"W")",
                       R"("do":"inspect","element":"W","side":"near")",
                       R"("do":"sign","role":"foreman","verdict":"accepted")"});
      case 19:
        blemish_ = ids_ + 1;
        return R"("do":"blemish","element":"W","kind":"honeycomb","x":1,"z":1,"w":0.1,"h":0.1)";
      case 20:
        return fmt::format(R"("do":"repair","target":"e{}","note":"filled")",
                           whole(0, 1) == 0 ? blemish_ : whole(1, ids_ + 1));
      case 21:
        return fmt::format(R"("do":"speed","inverter":"{}","vpm":{})", one_of({"I", "I", "J"}),
                           whole(20, 70) * 100);
      case 22:
        return fmt::format(R"("do":"trip","inverter":"{}")", one_of({"I", "J"}));
      case 23:
        return fmt::format(R"("do":"{}","element":"{}")", one_of({"cure-start", "cure-end"}),
                           one_of({"W", "W", "K"}));
      case 24:
      case 25:
        return fmt::format(R"("do":"concrete-temp","element":"{}","temp":{}{})",
                           one_of({"W", "W", "K"}), whole(5, 60),
                           one_of({"", R"(,"z":0.5)", R"(,"z":0.5,"x":0.2)", R"(,"z":9)"}));
      case 26:
        return fmt::format(R"("do":"permit-strip","element":"{}","why":"told")",
                           one_of({"W", "K"}));
      case 27:
        return fmt::format(R"("do":"specimen","specimen":"s{}","age_days":{},"strength_mpa":{})",
                           whole(1, 9), one_of({"0.01", "7", "28"}), whole(5, 50));
      case 28:
        return fmt::format(R"("do":"motor-out","motor":"{}")", one_of({"M1", "M2", "M3", "M6"}));
      case 29:
        return fmt::format(
            R"("do":"{}","figures":"00000000000000{:02}",{}"finding":"dose-low/W/{}")",
            one_of({"accept", "accept", "send-back"}), whole(1, 3), R"("reason":"why",)",
            whole(1, 3));
      case 30:
        return amendment();
      default:
        if (whole(0, 6) == 0) return R"("do":"pour-close")";
        return fmt::format(R"("do":"penetration","mix":"C","mixed":"{}","resistance":3.5)",
                           to_text(wall_ - std::chrono::seconds{whole(-60, 9000)}));
    }
  }

  std::string amendment() {
    const std::string path = one_of({"elements/W/thickness", "elements/K/rows/near/A/z",
                                     "elements/W/rows/near/B/z", "people/f", "name"});
    const std::string value = path == "name"       ? R"("another")"
                              : path == "people/f" ? fmt::format(R"({{"name":"F{}"}})", whole(1, 3))
                                                   : fmt::format("{}", whole(2, 9) * 0.1);
    if (whole(0, 3) == 0) {
      return fmt::format(
          R"("do":"amend","why":"hung so","path":"elements/W/rows/far/F{}","value":{{"z":{},)"
          R"("motors":[{{"id":"M1","x":2,"reach_x":1,"reach_z":0.5}}]}})",
          whole(1, 3), whole(2, 9) * 0.1);
    }
    return fmt::format(R"("do":"amend","why":"so built","path":"{}","value":{})", path, value);
  }

  std::string nonsense() {
    return one_of({R"("do":"run","element":"X","row":"A")",
                   R"("do":"rest","element":"W","row":"Z")", R"("do":"trip","inverter":"Z")",
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
                                  R"({"by":"g"})", R"({"do":"rest"})", R"({"vpm":5000})",
                                  R"({"element":"K"})", R"({"specimens":["s1"]})",
                                  R"({"strength_mpa":30})", R"({"specimen":"s2"})"})};
    return fmt::format(R"("do":"fix","target":"e{}","set":{},"why":"misread")", target, set);
  }

  Event made(const std::string& fields, Moment at) {
    auto event = parse_event(
        fmt::format(R"({{"id":"e{}","at":"{}","by":"f",{}}})", ++ids_, to_text(at), fields),
        "random");
    REQUIRE_MESSAGE(event, to_text(event.error()));
    if (whole(0, 9) > 0) event->entry = Entry{wall_, steady_, boot_};
    if (event->entry && ids_ % 3 == 0) {  // most at once, some late, some on a clock set back
      event->entry->kept = wall_ + std::chrono::seconds{ids_ * 37 % 300 - 20};
    }
    return *event;
  }

  std::mt19937 engine_;
  Moment at_ = *parse_moment("2026-03-02T22:00:00.000Z");
  Moment wall_ = at_ + std::chrono::hours{1};
  Seconds steady_{100};
  std::string boot_ = "boot1";
  int ids_ = 0, blemish_ = 1;
};

}  // namespace rb
