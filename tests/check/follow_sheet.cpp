#include "follow_sheet.h"

#include <algorithm>

#include "base/moment.h"
#include "pour/log/event.h"

namespace rb {

namespace {

class Follower {
 public:
  Follower(const PlannedPour& planned, const PlanWish& wish)
      : planned_(planned), wish_(wish), element_(planned.plan.elements.front()) {}

  std::vector<Event> events() {
    tell(Seconds{}, event::PourOpen{PourId{"P1"}, std::make_shared<const Plan>(planned_.plan)});
    tell(seconds(1), event::Ready{"form", true, {}});
    Seconds now = seconds(2);
    for (const MotorsMove& move : planned_.before) now = move_motors(move, now);
    const Seconds first = now;
    tell(first, event::Test{TicketId{"1"}, std::nullopt, wish_.concrete, {}, {}});
    for (const LiftStep& step : planned_.lifts) now = place(step, now);
    bring_trucks(first);
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

  Seconds move_motors(const MotorsMove& move, Seconds from) {
    if (move.from) tell(from, event::TakeDown{place_of(*move.from)});
    event::Hang hang{place_of(move.to), {}, true};
    for (const Motor& motor : element_.rows[move.to].motors) hang.motors.push_back(motor.id);
    tell(from + move.takes, hang);
    return from + move.takes;
  }

  Seconds place(const LiftStep& step, Seconds from) {
    tell(from, event::LiftStart{element_.id, step.lift});
    Seconds hands = std::max(from, hands_free_);
    for (const MotorsMove& move : step.moves) hands = move_motors(move, hands);
    hands_free_ = hands;
    Seconds now = from + step.place;
    tell(from + step.place / 2.0,
         event::Top{element_.id, (step.bottom + step.top) / 2.0, std::nullopt});
    tell(now, event::LiftEnd{element_.id, step.lift, step.top, std::nullopt});
    if (planned_.insert_too) {
      tell(now, event::Insert{element_.id, step.lift, std::nullopt, 3, metres(0.25), seconds(10),
                              metres(0.15)});
    }
    for (const std::size_t row : step.rows) {
      now += step.gap / 2.0;
      tell(now, event::Run{place_of(row), wish_.motor.top_speed});
      now += step.run;
      tell(now, event::Rest{place_of(row)});
      now += step.gap / 2.0;
    }
    return now + step.pause;
  }

  void bring_trucks(Seconds first) {
    Volume left = planned_.concrete;
    const Seconds each = planned_.duration * static_cast<double>(planned_.load / planned_.concrete);
    for (std::size_t i = 0; i < planned_.trucks; ++i) {
      const TicketId ticket{std::to_string(i + 1)};
      const Seconds begins = first + each * static_cast<double>(i);
      const Volume load = std::min(left, planned_.load);
      left -= load;
      const auto moment = [](Seconds s) { return after(*parse_moment("2026-03-02T05:00:00Z"), s); };
      tell(begins, event::Truck{ticket, wish_.mix.id, load, moment(begins - wish_.haul),
                                moment(begins - wish_.haul / 2.0)});
      tell(begins, event::Discharge{ticket, element_.id, moment(begins + each)});
    }
  }

  const PlannedPour& planned_;
  const PlanWish& wish_;
  const Element& element_;
  Seconds hands_free_{};
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

}  // namespace rb
