#include "screens/view/pour_view.h"

#include <algorithm>
#include <cmath>

#include "pour/log/log_entry.h"
#include "pour/log/origin.h"
#include "pour/outlook/forecast.h"
#include "pour/outlook/next_steps.h"
#include "pour/outlook/reckon.h"
#include "pour/plan/verdicts.h"
#include "screens/view/row_view.h"
#include "trade/motors/internal_vibrator.h"

namespace rb::screens {

namespace {

constexpr Seconds kSureWithin{3600};
constexpr double kGuessStep = 0.05;  // readings are guessed to the nearest 5 cm

Length to_step(Length height) {
  return metres(std::round(in_metres(height) / kGuessStep) * kGuessStep);
}

std::pair<Length, Length> low_and_high(const ElementState& there) {
  Length low = there.tops.front().standing();
  Length high = low;
  for (const auto& top : there.tops) {
    low = std::min(low, top.standing());
    high = std::max(high, top.standing());
  }
  return {low, high};
}

std::optional<Length> planned_top(const Element& element, int lift) {
  if (lift < 1 || static_cast<std::size_t>(lift) > element.lifts.size()) return {};
  return element.lifts[static_cast<std::size_t>(lift) - 1];
}

LiftView lift_view(const PourState& state, const CheckReport& report, std::size_t index,
                   Seconds now) {
  const Element& element = state.plan->elements[index];
  const ElementState& there = state.elements[index];
  LiftView view;
  if (!state.closed) {
    view.open = gates_of_lift(state, index, now);
    view.gates = not_passed(view.open);
  }
  view.planned = static_cast<int>(element.lifts.size());
  view.ceiling = element.rise_height();
  std::tie(view.low, view.high) = low_and_high(there);
  int greatest = 0;
  for (const LiftState& lift : there.lifts) greatest = std::max(greatest, lift.lift);
  view.next = greatest + 1;
  view.guess_end = to_step(view.high);
  view.guess_top = view.guess_end;
  if (there.lifts.empty()) {
    view.planned_top = planned_top(element, view.next);
    return view;
  }
  const LiftState& latest = there.lifts.back();
  view.latest = latest.lift;
  view.since = state.moment(latest.started);
  if (latest.last_reading > latest.started) view.read_at = state.moment(latest.last_reading);
  for (const LiftReport& lift : report.lifts) {
    if (lift.element != index || lift.index + 1 != there.lifts.size()) continue;
    view.rise = std::max(lift.rise_window, lift.rise_at_least);
    view.rise_unjudged = lift.rise_at_least.has_value();
    view.rise_limit = lift.rise_limit;
    const RiseVerdict rise = judge_rise(view.rise, view.rise_limit);
    view.fast = rise == RiseVerdict::fast;
    view.no_rate = rise == RiseVerdict::no_rate;
    view.near_limit = rise == RiseVerdict::near;
  }
  const LiftState* placing = state.placing(index);
  if (placing == nullptr) {
    view.planned_top = planned_top(element, view.next);
    return view;
  }
  view.placing = placing->lift;
  view.planned_top = planned_top(element, placing->lift);
  view.guess_end = view.planned_top ? std::max(*view.planned_top, view.high) : view.guess_end;
  Length reached = view.high;
  for (const auto& about : reckoned_tops(state, index, now)) {
    if (about) reached = std::max(reached, *about);
  }
  // With nothing to reckon from, the middle of the lift is the least wrong.
  if (reached == view.high && view.planned_top && *view.planned_top > view.high) {
    reached = (view.high + *view.planned_top) / 2.0;
  }
  view.guess_top = to_step(reached);
  return view;
}

ElevationView elevation_view(const PourState& state, std::size_t index, const LiftView& lift,
                             Seconds now) {
  const Element& element = state.plan->elements[index];
  const ElementState& there = state.elements[index];
  ElevationView view{.length = element.length,
                     .height = element.rise_height(),
                     .openings = element.openings,
                     .congested = {element.congested.begin(), element.congested.end()},
                     .lifts = element.lifts};
  const int shown = lift.placing ? *lift.placing : lift.next;
  if (shown >= 1 && static_cast<std::size_t>(shown) <= element.lifts.size()) {
    view.lift = static_cast<std::size_t>(shown) - 1;
  }
  const auto about = reckoned_tops(state, index, now);
  for (std::size_t bay = 0; bay < there.tops.size(); ++bay) {
    BayView b{.x0 = element.bay_start(bay), .standing = there.tops[bay].standing()};
    b.x1 = b.x0 + element.bays[bay];
    b.lift_bottom = b.standing;
    if (!there.lifts.empty()) b.lift_bottom = there.lifts.back().bottom[bay];
    if (const LiftState* placing = state.placing(index)) {
      b.about = about[bay];
      b.ended = placing->bay_ended[bay];
      const BayOfLift& placed = placing->bays[bay];
      b.may_start = there.tops.size() > 1 && !placed.started && !b.ended && !state.closed &&
                    placing->top[bay] <= placing->bottom[bay];
      if (placed.started && !placed.read) b.started = state.moment(*placed.started);
    }
    view.bays.push_back(b);
  }
  return view;
}

std::vector<ElementChoice> choices(const PourState& state, Seconds now) {
  std::vector<ElementChoice> all;
  for (std::size_t i = 0; i < state.elements.size(); ++i) {
    const Element& element = state.plan->elements[i];
    ElementChoice choice{
        .id = element.id, .kind = element.kind, .planned = static_cast<int>(element.lifts.size())};
    if (const LiftState* placing = state.placing(i)) choice.placing = placing->lift;
    choice.lifts_done = static_cast<int>(state.elements[i].lifts.size()) - (choice.placing ? 1 : 0);
    for (std::size_t row = 0; row < element.rows.size(); ++row) {
      if (state.running(i, row) != nullptr) ++choice.rows_running;
    }
    choice.rows_to_run = static_cast<int>(rows_to_run(state, i, now).size());
    all.push_back(choice);
  }
  return all;
}

RowPlace place_of(const Element& element, std::size_t row) {
  return {element.id, element.rows[row].side, element.rows[row].id};
}

std::optional<WindowView> window_view(const PourState& state, const Foreseen<Window>& foreseen) {
  if (!foreseen) return {};
  WindowView view{state.moment(foreseen->earliest), state.moment(foreseen->likely), {}};
  if (foreseen->latest) view.latest = state.moment(*foreseen->latest);
  return view;
}

void what_comes(PourView& view, const PourState& state, std::size_t index, Seconds now) {
  const Forecast ahead = forecast(state, index, std::max(now, state.last));
  view.full = window_view(state, ahead.next_top);
  // Reckoned too widely it says nothing a foreman could go by; what is reached is to come no more.
  if (view.full && (!view.lift.placing || view.full->likely <= view.now || !view.full->latest ||
                    between(view.full->earliest, *view.full->latest) > kSureWithin)) {
    view.full.reset();
  }
  for (const KnitClock& clock : ahead.knit) {
    const Joint* joint = clock.pending(now);
    if (joint == nullptr) continue;
    view.knit.push_back({clock.bay, state.moment(joint->early), joint->early <= now});
  }
  std::stable_sort(view.knit.begin(), view.knit.end(),
                   [](const KnitView& a, const KnitView& b) { return a.by < b.by; });
  const auto& rows = state.plan->elements[index].rows;
  for (MoveView& move : view.moves) {
    for (const std::size_t row : ahead.move.rows) {
      if (rows[row].id == move.to.row && rows[row].side == move.to.side) {
        move.due = window_view(state, ahead.move.due);
      }
    }
  }
}

void next_steps(PourView& view, const PourState& state, std::size_t index, Seconds now) {
  const Element& element = state.plan->elements[index];
  for (const RowToRun& run : rows_to_run(state, index, now)) {
    view.run_now.push_back({place_of(element, run.row), run.to_go, run.running, run.wait});
  }
  for (const MotorShift& move : motors_to_move(state, index, now)) {
    MoveView shown{.to = place_of(element, move.row), .lift = move.lift, .down = move.down};
    for (const MotorShift::From& from : move.from) {
      shown.from.push_back(
          {place_of(state.plan->elements[from.element], from.row), from.motors, from.running});
    }
    view.moves.push_back(std::move(shown));
  }
}

InsertView insert_view(const PourState& state, std::size_t index, const LiftView& lift) {
  InsertView view{.lift = lift.latest.value_or(0)};
  for (auto insert = state.inserts.rbegin(); insert != state.inserts.rend(); ++insert) {
    if (insert->element != index) continue;
    view.last = insert->what;
    break;
  }
  for (int group = 1; group <= static_cast<int>(view.widest.size()); ++group) {
    const auto widest =
        trade::insert_spacing(group, state.plan->limits.insert_spacing_factor.value);
    view.widest[static_cast<std::size_t>(group) - 1] = widest.value_or(metres(0));
  }
  // A head for walls, held as long as the middle of the usual span, as deep as a knit wants it.
  view.usual.group = 2;
  view.usual.spacing = metres(std::floor(in_metres(view.widest[1]) * 100) / 100);
  view.usual.each = (trade::kInsertTime.least + trade::kInsertTime.most) / 2.0;
  view.usual.depth_below = state.plan->limits.knit_depth.value;
  return view;
}

}  // namespace

std::optional<TapWas> tap_was(const PourState& state, EventRef ref) {
  const auto last = std::find_if(state.corrections.rbegin(), state.corrections.rend(),
                                 [&](const Correction& c) { return c.target == ref; });
  if (last == state.corrections.rend()) return std::nullopt;
  const LogEntry& entry = state.log[ref];
  const Event& first = entry.as_entered ? *entry.as_entered : entry.event;
  const Event& made_by = state.log[last->made_by].event;
  TapWas was{.at = first.at, .what = first.what, .when = made_by.at};
  const Person* person = state.plan->find(made_by.by);
  was.by = person == nullptr || person->name.empty() ? made_by.by.text : person->name;
  if (const auto* fix = std::get_if<event::Fix>(&made_by.what)) {
    was.why = fix->why;
    was.chosen = fix->chosen;
  } else if (const auto* strike = std::get_if<event::Strike>(&made_by.what)) {
    was.why = strike->why;
    was.chosen = strike->chosen;
  }
  return was;
}

TapView TapList::operator[](std::size_t i) const {
  return of(state_->taps[state_->taps.size() - 1 - i]);
}

TapView TapList::of(EventRef ref) const {
  const LogEntry& entry = state_->log[ref];
  TapView tap{.ref = ref,
              .id = entry.event.id,
              .at = entry.event.at,
              .what = entry.event.what,
              .struck = entry.struck,
              .fixed = entry.as_entered.has_value(),
              .late = entry.late(),
              .counts = entry.sense == LogEntry::Sense::counts,
              .uncertain = entry.event.uncertain,
              .keeping = ref + keeping_ >= state_->log.size()};
  if (entry.event.entry) tap.kept = entry.event.entry->wall;
  if (tap.struck || tap.fixed) tap.was = tap_was(*state_, ref);
  tap.from_script = brought_in(*state_, ref);
  tap.stepped = between(entry.when, entry.event.at);
  // A closed pour is left as it stands; that it was closed may be mended.
  const bool close = std::holds_alternative<event::PourClose>(entry.event.what);
  tap.may_correct = !entry.struck && !tap.id.empty() && (!state_->closed || close);
  if (tap.kept && tap.may_correct) {
    const Seconds gone = between(*tap.kept, now_) + tap.stepped;
    if (gone >= Seconds{-1} && gone < kTakeBack) tap.take_back = kTakeBack - gone;
  }
  return tap;
}

std::string TapList::name_of(const PersonId& person) const {
  const Person* known = state_ == nullptr ? nullptr : state_->plan->find(person);
  return known == nullptr || known->name.empty() ? person.text : known->name;
}

bool TapList::any_to_take_back() const {
  for (std::size_t i = 0; i < size(); ++i) {
    const TapView tap = (*this)[i];
    if (tap.take_back) return true;
    // What was kept before it is older still.
    if (!tap.kept || between(*tap.kept, now_) + tap.stepped >= kTakeBack) return false;
  }
  return false;
}

PourView make_pour_view(const PourState& state, const CheckReport& report, std::size_t element,
                        Moment now) {
  PourView view;
  if (element >= state.elements.size()) element = 0;
  const Seconds at = state.clock(now);
  view.site = state.plan->site;
  view.name = state.plan->name;
  view.units = state.plan->units;
  view.element = element;
  view.now = now;
  view.closed = state.closed;
  view.dose_min = state.plan->limits.dose_min.value;
  view.taps = TapList{state, now};
  view.ready = make_ready_lines(state);
  view.not_judged = report.not_judged;
  for (const auto& same : by_cause(report.findings)) {
    if (same.front().severity == Severity::stop) ++view.stops;
    if (same.front().severity == Severity::mend) ++view.mends;
    if (same.front().severity == Severity::note) ++view.notes;
  }
  if (!state.holds.empty() && !state.holds.back().to) {
    const HoldState& hold = state.holds.back();
    view.hold = HoldView{state.moment(hold.from), hold.reason, hold.moved, hold.chosen};
    if (!hold.moved && cleared_off(state)) view.hold->moved = state.moved.back().what.thing;
  }
  view.trucks = LazyList<TruckView>{[&state, now] { return make_truck_views(state, now); }};
  view.loads = LazyList<LoadView>{[&state] { return make_load_views(state); }};
  view.strips =
      LazyList<StripView>{[&state, element, at] { return make_strip_views(state, element, at); }};
  view.faces = LazyList<FaceView>{
      [&state, &report, element] { return make_face_views(state, report, element); }};
  view.specimens = LazyList<SpecimenView>{[&state] { return make_specimen_views(state); }};
  view.review = LazyList<GroupView>{[&state, &report] { return make_group_views(state, report); }};
  view.inverters = LazyList<InverterView>{[&state] { return make_inverter_views(state); }};
  view.last_speeds = LazyList<Frequency>{[&state] { return last_speeds(state, kSpeedChoices); }};
  view.pressures = LazyList<PressureView>{
      [&state, element, at] { return make_pressure_views(state, element, at); }};
  if (!state.air.empty()) view.air = state.air.back().second;
  if (state.elements.empty()) return view;
  const Element& planned = state.plan->elements[element];
  view.element_id = planned.id;
  if (const CureState* cure = state.curing(element)) view.curing = state.moment(cure->from);
  view.two_sides = planned.has_rows(Side::near_side) && planned.has_rows(Side::far_side);
  view.elements = choices(state, at);
  view.naming.elements = view.elements.size() > 1;
  for (const Element& e : state.plan->elements) {
    const bool both = e.has_rows(Side::near_side) && e.has_rows(Side::far_side);
    view.naming.two_sides = view.naming.two_sides || both;
  }
  view.lift = lift_view(state, report, element, at);
  view.rows = make_row_views(state, element, now);
  view.elevation = elevation_view(state, element, view.lift, at);
  next_steps(view, state, element, at);
  if (!state.closed) what_comes(view, state, element, at);
  view.insert = insert_view(state, element, view.lift);
  return view;
}

void mark_keeping(PourView& view, const PourState& state, std::size_t count) {
  view.taps.keeping_last(std::min(count, state.log.size()));
}

Seconds next_change(const PourView& view) {
  bool ticking = view.lift.placing.has_value() || view.hold.has_value();
  for (const RowView& row : view.rows) ticking = ticking || row.running_since;
  for (const ElementChoice& other : view.elements) ticking = ticking || other.rows_running > 0;
  ticking = ticking || view.taps.any_to_take_back();
  const auto whole = ticking ? std::chrono::milliseconds{1000} : std::chrono::milliseconds{60000};
  return Seconds{whole - view.now.time_since_epoch() % whole};
}

}  // namespace rb::screens
