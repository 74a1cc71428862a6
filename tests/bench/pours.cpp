#include "bench/pours.h"

#include <fmt/format.h>

#include <fstream>
#include <iterator>

#include "bench/bench.h"
#include "pour/log/script.h"

using namespace rb;

namespace bench {

namespace {

class LongPour {
 public:
  explicit LongPour(std::size_t count) {
    const std::size_t walls = std::max<std::size_t>(1, (count + 2500) / 5000);
    const std::size_t a_wall = count / walls;
    auto opened = read_script(opening(walls), "bench");  // a plan has 5,000 motors at most
    if (!opened) throw Trouble(to_text(opened.error()));
    events = std::move(opened->events);
    for (std::size_t w = 1; w <= walls; ++w) wall(fmt::format("W{}", w), a_wall);
  }
  std::vector<Event> events;

 private:
  static constexpr int kLifts = 24;

  static std::string opening(std::size_t walls) {
    std::string text =
        R"({"at":"2026-03-02T00:00:00.000Z","by":"f","do":"pour-open","pour":"B","plan":{"mixes":[{"id":"C","unit_weight":24,"slump":0.12,"initial_set_h":5}],"power":[{"id":"I1","volts":42,"max_amps":900,"motors":["M1","M2"]}],"motor_type":{"amps":7.5,"force_kn":4,"vpm_max":6000},"elements":[)";
    for (std::size_t w = 1; w <= walls; ++w) {
      text += fmt::format(
          R"({}{{"id":"W{}","length":60,"height":12,"thickness":0.3,"bays":[6,6,6,6,6,6,6,6,6,6],"form_rating_kpa":300,"rows":[)",
          w > 1 ? "," : "", w);
      for (int r = 0; r < kLifts; ++r) {
        text += fmt::format(R"({}{{"id":"R{}","z":{},"serves":[{},{}],"motors":[)", r ? "," : "",
                            r + 1, 0.25 + 0.5 * r, r + 1, r + 2);
        for (int m = 0; m < 40; ++m) {
          text += fmt::format(R"({}{{"id":"M{}","x":{},"reach_x":0.9,"reach_z":0.45}})",
                              m ? "," : "", m, 0.75 + 1.5 * m);
        }
        text += "]}";
      }
      text += "]}";
    }
    return text + "]}}\n";
  }

  void add(Happening what, int pause = 9) {
    at_ += std::chrono::seconds{pause};
    events.push_back({EventId{std::to_string(events.size())},
                      at_,
                      PersonId{"f"},
                      std::move(what),
                      {},
                      Entry{at_, at_.time_since_epoch(), "bench"}});
  }

  void run(const ElementId& wall, int row) {
    if (row < 1) return;
    const RowPlace place{wall, Side::near_side, RowId{fmt::format("R{}", row)}};
    add(event::Run{place, vibrations_per_minute(6000)}, 3);
    add(event::Rest{place}, 50);
  }

  void wall(const std::string& id, std::size_t count) {
    const ElementId wall{id};
    std::vector<MotorId> motors;
    for (int m = 0; m < 40; ++m) motors.push_back(MotorId{fmt::format("M{}", m)});
    const std::size_t until = events.size() + count;
    for (int lift = 1; lift <= kLifts; ++lift) {
      const std::size_t end = until - count * static_cast<std::size_t>(kLifts - lift) / kLifts;
      const RowPlace row{wall, Side::near_side, RowId{fmt::format("R{}", lift)}};
      add(event::Hang{row, motors, true});
      add(event::LiftStart{wall, lift});
      const double low = 0.5 * (lift - 1);
      for (int part = 1; part <= 4; ++part) {
        for (int bay = 1; bay <= 10; ++bay) add(event::Top{wall, metres(low + 0.1 * part), bay});
      }
      add(event::LiftEnd{wall, lift, metres(low + 0.5), std::nullopt});
      for (int pass = 0; pass < 2; ++pass) {
        run(wall, lift - 1);
        run(wall, lift);
      }
      for (int n = 0; events.size() < end; ++n) {  // the rest of the lift's taps
        const TicketId ticket{fmt::format("{}-{}-{}", id, lift, n)};
        switch (n % 8) {
          case 0:
            add(event::Truck{ticket, MixId{"C"}, cubic_metres(2), at_, at_});
            break;
          case 1:
            // Told when the truck is empty; one nobody tells of grows old as long as the pour goes
            // on.
            add(event::Discharge{TicketId{fmt::format("{}-{}-{}", id, lift, n - 1)}, wall,
                                 at_ + std::chrono::seconds{9}});
            break;
          case 2:
            add(event::Test{TicketId{fmt::format("{}-{}-{}", id, lift, n - 2)}, metres(0.12),
                            celsius(20 + (lift % 2)), std::nullopt, std::nullopt});
            break;
          case 3:
            add(event::Note{"seen", wall, lift});
            break;
          default:
            run(wall, lift);
            ++n;
        }
      }
    }
  }

  Moment at_ = *parse_moment("2026-03-02T00:00:00.000Z");
};

}  // namespace

std::vector<Event> long_pour(std::size_t count) {
  return std::move(LongPour{count}.events);
}

std::vector<Event> demo_pour() {
  std::ifstream file(RISEBOOK_SOURCE_DIR "/assets/demo-pour.jsonl");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  auto script = read_script(text, "the demo pour");
  if (!script) throw Trouble(to_text(script.error()));
  std::vector<Event> events = std::move(script->events);
  for (std::size_t i = 0; i < events.size(); ++i) {
    if (events[i].id.empty()) events[i].id = EventId{std::to_string(i + 1)};
    events[i].entry = Entry{events[i].at, events[i].at.time_since_epoch(), "demo"};
  }
  return events;
}

std::vector<Event> until(std::vector<Event> events, const char* moment) {
  const Moment end = *parse_moment(moment);
  std::erase_if(events, [&](const Event& e) { return e.at > end; });
  return events;
}

}  // namespace bench
