#include "follow_sheet.h"

#include <algorithm>

#include <doctest/doctest.h>

#include "base/moment.h"
#include "pour/log/event.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"

namespace rb {

namespace {

class Follower {
 public:
  Follower(const PlannedPour& planned, const PlanWish& wish)
      : planned_(planned), wish_(wish), element_(planned.plan.elements.front()) {}

  std::vector<Event> events() {
    tell(Seconds{}, event::PourOpen{PourId{"P1"}, std::make_shared<const Plan>(planned_.plan)});
    tell(seconds(1), event::Ready{"form", true, {}});
    first_ = seconds(2);
    for (const MotorsMove& move : planned_.before) {
      first_ = std::max(first_, seconds(2) - move.begins);
    }
    for (const MotorsMove& move : planned_.before) move_motors(move);
    if (of_deck()) tell(seconds(1), event::AirTemp{celsius(15), 80.0, metres_per_second(1)});
    tell(first_, event::Test{TicketId{"1"}, std::nullopt, wish_.concrete, {}, {}});
    for (const LiftStep& step : planned_.lifts) {
      if (of_deck()) {
        place_layer(step);
      } else {
        place(step);
      }
    }
    bring_trucks();
    const Seconds now = first_ + planned_.duration;
    tell(now, event::PourClose{});
    for (const event::Role role :
         {event::Role::foreman, event::Role::inspector, event::Role::superintendent}) {
      tell(now + seconds(60), event::Sign{role, "accepted", {}});
    }
    std::stable_sort(events_.begin(), events_.end(),
                     [](const Event& a, const Event& b) { return a.at < b.at; });
    return std::move(events_);
  }

 private:
  void tell(Seconds at, Happening what) {
    Event event;
    event.id = EventId{"e" + std::to_string(events_.size())};
    event.at = after(*parse_moment("2026-03-02T05:00:00Z"), at);
    event.by = PersonId{"f1"};
    event.what = std::move(what);
    events_.push_back(std::move(event));
  }
  [[nodiscard]] RowPlace place_of(std::size_t row) const {
    return {element_.id, element_.rows[row].side, element_.rows[row].id};
  }

  void move_motors(const MotorsMove& move) {
    if (move.from) tell(first_ + move.begins, event::TakeDown{place_of(*move.from)});
    event::Hang hang{place_of(move.to), {}, true};
    for (const Motor& motor : element_.rows[move.to].motors) hang.motors.push_back(motor.id);
    tell(first_ + move.ends(), hang);
  }

  void place(const LiftStep& step) {
    const Seconds from = first_ + step.begins;
    tell(from, event::LiftStart{element_.id, step.lift});
    for (const MotorsMove& move : step.moves) move_motors(move);
    const Seconds placed = from + step.place;
    tell(from + step.place / 2.0,
         event::Top{element_.id, (step.bottom + step.top) / 2.0, std::nullopt});
    tell(placed, event::LiftEnd{element_.id, step.lift, step.top, std::nullopt});
    for (const InsertStep& insert : step.inserts) {
      tell(placed,
           event::Insert{element_.id, step.lift, static_cast<int>(insert.bay) + 1, kPlannedGroup,
                         metres(0.4), seconds(10), metres(0.15), insert.points, insert.heads});
    }
    for (std::size_t r = 0; r < step.rows.size(); ++r) {
      const RowPlace row = place_of(step.rows[r]);
      tell(first_ + step.runs_at(r), event::Run{row, wish_.motor.top_speed});
      tell(first_ + step.runs_at(r) + step.run, event::Rest{row});
    }
  }

  [[nodiscard]] bool of_deck() const { return element_.kind == ElementKind::deck; }

  void place_layer(const LiftStep& step) {
    tell(first_ + step.begins, event::LiftStart{element_.id, step.lift});
    for (const InsertStep& in : step.inserts) {
      const int bay = static_cast<int>(in.bay) + 1;
      tell(first_ + in.fills, event::BayStart{element_.id, step.lift, bay});
      tell(first_ + in.filled, event::LiftEnd{element_.id, step.lift, step.top, bay});
      tell(first_ + in.begins + in.takes,
           event::Insert{element_.id, step.lift, bay, kPlannedGroup, metres(0.4), seconds(10),
                         metres(0.15), in.points, in.heads});
    }
  }

  void bring_trucks() {
    const auto moment = [](Seconds s) { return after(*parse_moment("2026-03-02T05:00:00Z"), s); };
    for (std::size_t i = 0; i < planned_.loads.size(); ++i) {
      const PlannedLoad& load = planned_.loads[i];
      const TicketId ticket{std::to_string(i + 1)};
      const Seconds begins = first_ + load.begins;
      tell(begins, event::Truck{ticket, wish_.mix.id, load.volume, moment(begins - wish_.haul),
                                moment(begins - wish_.haul / 2.0)});
      tell(begins, event::Discharge{ticket, element_.id, moment(first_ + load.ends)});
    }
  }

  const PlannedPour& planned_;
  const PlanWish& wish_;
  const Element& element_;
  Seconds first_{};  // the first lift's start, from the opening
  std::vector<Event> events_;
};

}  // namespace

PlanWish wish_for(ElementId element) {
  PlanWish w;
  w.element = std::move(element);
  w.length = metres(12);
  w.height = metres(4.8);
  w.thickness = metres(0.3);
  w.form_rating = kilopascals(60);
  w.form_mass = kilograms_per_m2(60);
  w.rise_wished = metres_per_hour(1.5);
  w.mix = {MixId{"C1"}, kilonewtons_per_m3(24),   metres(0.12), std::nullopt, hours(5),
           celsius(20), trade::CementClass::plain};
  w.motor = {amperes(4.2), kilonewtons(4), vibrations_per_minute(6000)};
  w.reach_x = w.reach_z = metres(0.75);
  w.volts = volts(42);
  w.inverter_amps = amperes(40);
  w.load = cubic_metres(6);
  w.haul = seconds(1800);
  w.hang_time = seconds(240);
  return w;
}

std::vector<Event> follow_sheet(const PlannedPour& planned, const PlanWish& wish) {
  return Follower{planned, wish}.events();
}

PourState followed(const PlannedPour& planned, const PlanWish& wish) {
  const auto script = read_script(write_script(follow_sheet(planned, wish)), "followed.jsonl");
  REQUIRE_MESSAGE(script, (script ? std::string{} : to_text(script.error())));
  return *fold(script->events);
}

}  // namespace rb
