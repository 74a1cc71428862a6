#include "pour/fold_happening.h"

#include <fmt/format.h>

#include <algorithm>

namespace rb {

namespace {

// What reads above the planned top of the form is refused; a hand's breadth is left for freeboard.
constexpr Length kAboveForm = metres(0.1);
// A tap counts as live when it was entered within this of when it says it happened.
constexpr Seconds kLiveTap{1};

struct Refusal {
  LogEntry::Sense sense;
  std::string why;
};

[[noreturn]] void wrong(std::string why) {
  throw Refusal{LogEntry::Sense::wrong, std::move(why)};
}
[[noreturn]] void repeats(std::string why) {
  throw Refusal{LogEntry::Sense::repeats, std::move(why)};
}

class Apply {
 public:
  Apply(PourState& state, EventRef ref)
      : state_(state), ref_(ref), entry_(state.log[ref]), at_(state.clock(entry_.when)) {}

  void operator()(const event::PourOpen&) {
    if (ref_ != 0) wrong("the pour is already open");
  }
  void operator()(const event::Ready& e) { state_.ready.push_back({ref_, at_, e}); }

  void operator()(const event::Hang& e) {
    const auto [element, row] = place(e.place);
    const Row& planned = state_.plan->elements[element].rows[row];
    if (HangState* hung = open_hang(element, row)) hung->to = at_;
    state_.hangs.push_back(
        {ref_, element, row, at_, std::nullopt, filled(planned, e.motors), e.cables});
  }
  void operator()(const event::TakeDown& e) {
    const auto [element, row] = place(e.place);
    HangState* hung = open_hang(element, row);
    RunState* run = open_run(element, row);
    if (run != nullptr) run->to = at_;  // motors off the form cannot run
    if (hung == nullptr && run == nullptr) {
      repeats(fmt::format("row {} is not hung", e.place.row.text));
    }
    if (hung != nullptr) hung->to = at_;
  }

  void operator()(const event::LiftStart& e) {
    const std::size_t element = index_of(e.element);
    ElementState& there = state_.elements[element];
    if (const LiftState* now = state_.placing(element); now && now->lift == e.lift) {
      repeats(fmt::format("lift {} is already being placed", e.lift));
    }
    LiftState lift{.ref = ref_, .lift = e.lift, .started = at_, .last_reading = at_};
    for (auto& top : there.tops) {
      top.stand(at_);
      lift.bottom.push_back(top.standing());
    }
    lift.top = lift.bottom;
    lift.bay_ended.assign(there.tops.size(), false);
    if (!there.lifts.empty()) there.lifts.back().next_start = at_;
    there.lifts.push_back(std::move(lift));
  }
  void operator()(const event::Top& e) {
    const std::size_t element = index_of(e.element);
    check_height(element, e.height);
    LiftState* lift = latest_lift(element);
    for (const std::size_t bay : bays(element, e.bay)) {
      read_top(element, bay, e.height);
      if (lift == nullptr) continue;
      // Concrete topped up after the lift's end still belongs to it: no part goes unjudged.
      const Length standing = state_.elements[element].tops[bay].standing();
      if (!lift->bay_ended[bay] || standing > lift->top[bay]) lift->last_reading = at_;
      lift->top[bay] = standing;
    }
  }
  void operator()(const event::LiftEnd& e) {
    const std::size_t element = index_of(e.element);
    check_height(element, e.height);
    auto& lifts = state_.elements[element].lifts;
    const auto lift = std::find_if(lifts.rbegin(), lifts.rend(),
                                   [&](const LiftState& l) { return l.lift == e.lift; });
    if (lift == lifts.rend()) {
      wrong(fmt::format("lift {} of {} has not been started by then", e.lift, e.element.text));
    }
    for (const std::size_t bay : bays(element, e.bay)) {
      read_top(element, bay, e.height);
      lift->top[bay] = state_.elements[element].tops[bay].standing();
      lift->bay_ended[bay] = true;
    }
    lift->last_reading = at_;
    lift->ended = at_;
  }

  void operator()(const event::Run& e) {
    const auto [element, row] = place(e.place);
    if (RunState* run = open_run(element, row)) {
      if (e.speed) {
        run->speed = run->speed ? std::max(*run->speed, *e.speed) : *e.speed;
        run->speed_low = run->speed_low ? std::min(*run->speed_low, *e.speed) : *e.speed;
      }
      repeats(fmt::format("row {} was already running", e.place.row.text));
    }
    const HangState* hung = open_hang(element, row);
    state_.runs.push_back({ref_, std::nullopt, element, row, at_, std::nullopt, e.speed, e.speed,
                           hung != nullptr && hung->cables});
  }
  void operator()(const event::Rest& e) {
    const auto [element, row] = place(e.place);
    RunState* run = open_run(element, row);
    if (run == nullptr) repeats(fmt::format("row {} was not running", e.place.row.text));
    run->to = run->from + run_length(*run);
    run->rest = ref_;
    at_ = std::max(at_, *run->to);
  }
  void operator()(const event::Insert& e) {
    const std::size_t element = index_of(e.element);
    std::optional<std::size_t> bay;
    if (e.bay) bay = bays(element, e.bay).front();
    state_.inserts.push_back({ref_, at_, element, bay, e});
  }

  void operator()(const event::Truck& e) {
    if (state_.plan->find(e.mix) == nullptr) {
      wrong(fmt::format("mix {} is not in the plan", e.mix.text));
    }
    TruckState& truck = ticket(e.ticket);
    if (truck.what) wrong(fmt::format("ticket {} was already entered", e.ticket.text));
    truck.ref = ref_;
    truck.what = e;
  }
  void operator()(const event::Discharge& e) {
    std::optional<std::size_t> element;
    if (e.element) element = index_of(*e.element);
    // An end logged as it comes is the event's own moment, by its own clock.
    std::optional<Seconds> ended;
    if (e.ended) ended = *e.ended == entry_.event.at ? at_ : state_.clock(*e.ended);
    if (ended && *ended < at_) wrong("the discharge ends before it begins");
    TruckState& truck = ticket(e.ticket);
    if (truck.discharge && !truck.ended && ended) {  // the end of a discharge logged when it began
      if (*ended < *truck.discharged) wrong("the discharge ends before it began");
      truck.ended = ended;
      at_ = *ended;
      return;
    }
    if (truck.discharge) repeats(fmt::format("ticket {} was already discharged", e.ticket.text));
    truck.discharge = ref_;
    truck.discharged = at_;
    truck.ended = ended;
    truck.element = element;
    if (ended) at_ = *ended;
  }
  void operator()(const event::Test& e) { state_.tests.push_back({ref_, at_, e}); }
  void operator()(const event::AirTemp& e) { state_.air.emplace_back(at_, e.temp); }

  void operator()(const event::Hold& e) {
    if (!state_.holds.empty() && !state_.holds.back().to) repeats("the pour is already on hold");
    state_.holds.push_back({ref_, at_, std::nullopt, e.reason});
  }
  void operator()(const event::Resume&) {
    if (state_.holds.empty() || state_.holds.back().to) repeats("the pour is not on hold");
    state_.holds.back().to = at_;
  }
  void operator()(const event::Note& e) {
    if (e.element) (void)index_of(*e.element);
    state_.notes.push_back(ref_);
  }
  void operator()(const event::Fix&) {}
  void operator()(const event::Strike&) {}
  void operator()(const event::PourClose&) {
    if (state_.closed) repeats("the pour is already closed");
    state_.closed = entry_.when;
  }
  void operator()(const event::Sign&) { state_.signs.push_back(ref_); }
  void operator()(const event::Strip& e) {
    (void)index_of(e.element);
    state_.strips.push_back(ref_);
  }
  void operator()(const event::Blemish& e) {
    const Element& element = state_.plan->elements[index_of(e.element)];
    if (e.patch.x > element.length || e.patch.z > element.rise_height()) {
      wrong(fmt::format("the place is off the face of {}", e.element.text));
    }
    state_.blemishes.push_back(ref_);
  }
  void operator()(const event::Repair& e) {
    const bool known = std::any_of(state_.log.begin(), state_.log.end(), [&](const LogEntry& past) {
      return past.event.id == e.target && std::holds_alternative<event::Blemish>(past.event.what);
    });
    if (!known) wrong(fmt::format("there is no blemish {} to repair", e.target.text));
    state_.repairs.push_back(ref_);
  }
  void operator()(const event::Penetration& e) {
    if (state_.plan->find(e.mix) == nullptr) {
      wrong(fmt::format("mix {} is not in the plan", e.mix.text));
    }
    if (state_.clock(e.mixed) >= at_) wrong("the sample was mixed after it was read");
    state_.penetrations.push_back({ref_, at_, e});
  }

  [[nodiscard]] Seconds at() const { return at_; }

 private:
  [[nodiscard]] std::size_t index_of(const ElementId& id) const {
    const auto& all = state_.plan->elements;
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Element& e) { return e.id == id; });
    if (found == all.end()) wrong(fmt::format("element {} is not in the plan", id.text));
    return static_cast<std::size_t>(found - all.begin());
  }
  [[nodiscard]] std::pair<std::size_t, std::size_t> place(const RowPlace& place) const {
    const std::size_t element = index_of(place.element);
    const auto& rows = state_.plan->elements[element].rows;
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& r) {
      return r.id == place.row && r.side == place.side;
    });
    if (found == rows.end()) {
      wrong(fmt::format("row {} on the {} side of {} is not in the plan", place.row.text,
                        to_text(place.side), place.element.text));
    }
    return {element, static_cast<std::size_t>(found - rows.begin())};
  }
  [[nodiscard]] std::vector<std::size_t> bays(std::size_t element, std::optional<int> bay) const {
    const std::size_t count = state_.plan->elements[element].bays.size();
    std::vector<std::size_t> chosen;
    if (bay) {
      if (static_cast<std::size_t>(*bay) > count) {
        wrong(fmt::format("bay {} is not in the plan; {} has {}", *bay,
                          state_.plan->elements[element].id.text, count));
      }
      chosen.push_back(static_cast<std::size_t>(*bay) - 1);
    } else {
      for (std::size_t i = 0; i < count; ++i) chosen.push_back(i);
    }
    return chosen;
  }
  void check_height(std::size_t element, Length height) const {
    const Element& planned = state_.plan->elements[element];
    if (height > planned.rise_height() + kAboveForm) {
      wrong(fmt::format("a top of {:g} m is above the form of {} ({:g} m)", in_metres(height),
                        planned.id.text, in_metres(planned.rise_height())));
    }
  }
  void read_top(std::size_t element, std::size_t bay, Length height) {
    trade::TopCurve& top = state_.elements[element].tops[bay];
    state_.readings.push_back({ref_, at_, element, bay, height, top.standing()});
    top.read(at_, height);
  }
  LiftState* latest_lift(std::size_t element) {
    auto& lifts = state_.elements[element].lifts;
    return lifts.empty() ? nullptr : &lifts.back();
  }
  HangState* open_hang(std::size_t element, std::size_t row) {
    return const_cast<HangState*>(state_.hanging(element, row));
  }
  RunState* open_run(std::size_t element, std::size_t row) {
    return const_cast<RunState*>(state_.running(element, row));
  }
  TruckState& ticket(const TicketId& id) {
    const auto found = std::find_if(state_.trucks.begin(), state_.trucks.end(),
                                    [&](const TruckState& t) { return t.ticket == id; });
    if (found != state_.trucks.end()) return *found;
    state_.trucks.push_back({.ticket = id});
    return state_.trucks.back();
  }
  // Which places of a row hold a motor: those whose planned motor was hung, then, from the left,
  // one for each other motor (a spare takes the place of one that is missing). None named = all.
  static std::vector<bool> filled(const Row& row, const std::vector<MotorId>& motors) {
    if (motors.empty()) return std::vector<bool>(row.motors.size(), true);
    std::vector<bool> places(row.motors.size(), false);
    std::size_t spares = 0;
    for (const MotorId& motor : motors) {
      const auto planned = std::find_if(row.motors.begin(), row.motors.end(),
                                        [&](const Motor& m) { return m.id == motor; });
      if (planned == row.motors.end()) {
        ++spares;
      } else {
        places[static_cast<std::size_t>(planned - row.motors.begin())] = true;
      }
    }
    for (std::size_t i = 0; i < places.size() && spares > 0; ++i) {
      if (!places[i]) {
        places[i] = true;
        --spares;
      }
    }
    return places;
  }
  // Both ends tapped live in one start of the tablet: the steady clock tells the length.
  [[nodiscard]] Seconds run_length(const RunState& run) const {
    const Event& began = state_.log[run.ref].event;
    const Event& ended = entry_.event;
    const auto live = [](const Event& e) {
      return e.entry && std::chrono::abs(between(e.at, e.entry->wall)) < kLiveTap;
    };
    if (live(began) && live(ended) && began.entry->boot == ended.entry->boot) {
      return ended.entry->steady - began.entry->steady;
    }
    return at_ - run.from;
  }

  PourState& state_;
  EventRef ref_;
  LogEntry& entry_;
  Seconds at_;
};

}  // namespace

void apply_happening(PourState& state, EventRef ref) {
  Apply apply{state, ref};
  try {
    std::visit(apply, state.log[ref].event.what);
    state.last = std::max(state.last, apply.at());
  } catch (const Refusal& refusal) {
    state.log[ref].sense = refusal.sense;
    state.log[ref].why_not = refusal.why;
  }
}

}  // namespace rb
