#include "pour/outlook/form_pressure.h"

#include <algorithm>

#include "pour/outlook/form.h"
#include "pour/outlook/pressed.h"
#include "trade/dose/set_height.h"
#include "trade/pressure/rerun_wait.h"
#include "trade/pressure/rise.h"

namespace rb {

namespace {

struct Method {
  std::optional<Pressure> greatest;
  std::optional<Error> why_not;
};

Method method_at(const PourState& state, const trade::PressureCase& c, Velocity rise) {
  const auto pressure = trade::method_pressure(state.plan->pressure_method, c, rise);
  if (pressure) return {*pressure, std::nullopt};
  return {std::nullopt, pressure.error()};
}

// Rows that run at a moment, its ends counted in, and the lowest they make press as liquid, but for
// what has set.
struct Shaken {
  std::vector<std::size_t> rows;
  std::optional<Length> to;
  std::optional<std::size_t> lowest_row;
};

// The runs of a bay's rows, asked at moments one after the other.
class RunsOn {
 public:
  RunsOn(const PourState& state, std::size_t element, std::size_t bay) {
    const Element& planned = state.plan->elements[element];
    std::vector<std::optional<Length>> pressed;  // by row
    for (const Row& row : planned.rows) {
      const auto bays = bays_reached(planned, row);
      const auto there = std::find_if(
          bays.begin(), bays.end(), [&](const BayReached& reached) { return reached.bay == bay; });
      pressed.push_back(there == bays.end() ? std::nullopt : std::optional{there->pressed});
    }
    for (const RunState& run : state.runs) {  // in order of start
      if (run.element != element || !pressed[run.row]) continue;
      runs_.push_back({run.from, run.to, run.row, *pressed[run.row]});
    }
  }

  // Not before the moment asked before.
  Shaken at(Seconds moment, Length top, Length floor) {
    for (; next_ < runs_.size() && runs_[next_].from <= moment; ++next_) {
      on_.push_back(runs_[next_]);
    }
    std::erase_if(on_, [&](const On& run) { return run.to && *run.to < moment; });
    Shaken shaken;
    for (const On& run : on_) {
      const Length low = std::max(run.pressed, floor);
      if (std::find(shaken.rows.begin(), shaken.rows.end(), run.row) == shaken.rows.end()) {
        shaken.rows.push_back(run.row);
      }
      if (low < top && (!shaken.to || low < *shaken.to)) {
        shaken.to = low;
        shaken.lowest_row = run.row;
      }
    }
    return shaken;
  }

 private:
  struct On {
    Seconds from{};
    std::optional<Seconds> to;
    std::size_t row = 0;
    Length pressed;
  };
  std::vector<On> runs_, on_;
  std::size_t next_ = 0;
};

// The moments between which nothing turns. Between two of them: the top never falls, so that every
// head without a row grows; the gain over a window runs straight (it bends where an end of the
// window meets a reading), so that the fastest rise so far is reached at one end; which rows run,
// the mix and the temperature stay; what has set grows straight, too, so that a row's head is
// greatest at one end. So every pressure is greatest at an end of a stretch, taken with what held
// before it and with what holds from it on.
std::vector<Seconds> turning_points(const PourState& state, std::size_t element, std::size_t bay,
                                    const trade::TopCurve& late,
                                    const std::vector<trade::SetStep>& sets, Seconds until) {
  const Seconds window = state.plan->limits.rise_window.value;
  std::vector<Seconds> turns{until};
  const auto turn = [&](Seconds at) {
    if (at < until) turns.push_back(at);
  };
  for (const trade::SurfacePoint& point : state.elements[element].tops[bay].points()) {
    turn(point.at);
    turn(point.at + window);
  }
  for (std::size_t i = 0; i < sets.size(); ++i) {
    if (sets[i].at) turn(*sets[i].at);
    for (const trade::SurfacePoint& point : late.points()) turn(sets[i].sets(point.at));
    for (const trade::SetStep& other : sets) turn(sets[i].sets(other.from));
  }
  for (const RunState& run : state.runs) {
    if (run.element != element) continue;
    turn(run.from);
    if (run.to) turn(*run.to);
  }
  for (const TestState& test : state.tests) turn(test.at);
  for (const TruckState& truck : state.trucks) {
    for (const PartState& part : truck.parts) turn(part.from);
  }
  std::sort(turns.begin(), turns.end());
  turns.erase(std::unique(turns.begin(), turns.end()), turns.end());
  return turns;
}

class WorstOfBay {
 public:
  WorstOfBay(const PourState& state, std::size_t element, std::size_t bay)
      : state_(state),
        element_(element),
        bay_(bay),
        top_(state.elements[element].tops[bay]),
        late_(latest_top(state.elements[element], bay)),
        sets_(set_steps(state, element, SetSide::late)),
        runs_(state, element, bay),
        rating_(state.plan->elements[element].form_rating) {}

  std::optional<WorstPressure> find(Seconds until) {
    const Seconds window = state_.plan->limits.rise_window.value;
    std::optional<trade::PressureCase> before;
    for (const Seconds at : turning_points(state_, element_, bay_, late_, sets_, until)) {
      fastest_ = std::max(fastest_, rate(top_.at(at) - top_.before(at - window), window));
      if (before) take(at, *before, trade::set_before(late_, sets_, at));
      before = pressure_case(state_, element_, at);
      take(at, *before, trade::set_by(late_, sets_, at));
    }
    return worst_;
  }

 private:
  void take(Seconds at, const trade::PressureCase& c, Length floor) {
    const Length top = top_.at(at);
    if (top <= Length{}) return;
    const Method method = method_at(state_, c, fastest_);
    const Shaken shaken = runs_.at(at, top, floor);
    const auto greatest =
        trade::pressure_profile(c.unit_weight, top, method.greatest, shaken.to).greatest();
    if (worst_ && greatest.pressure <= worst_->greatest.pressure) return;
    worst_ = WorstPressure{at, bay_, greatest, std::nullopt, method.why_not, rating_};
    if (greatest.why == trade::PressureFrom::running_row) worst_->row = shaken.lowest_row;
  }

  const PourState& state_;
  std::size_t element_, bay_;
  const trade::TopCurve& top_;
  trade::TopCurve late_;
  std::vector<trade::SetStep> sets_;
  RunsOn runs_;
  std::optional<Pressure> rating_;
  Velocity fastest_;
  std::optional<WorstPressure> worst_;
};

}  // namespace

std::optional<FormPressure> form_pressure(const PourState& state, std::size_t element,
                                          std::size_t bay, Seconds at) {
  if (state.plan->elements[element].kind == ElementKind::deck) return std::nullopt;
  const trade::TopCurve& top = state.elements[element].tops[bay];
  const trade::PressureCase c = pressure_case(state, element, at);
  FormPressure there;
  there.bay = bay;
  there.at = at;
  there.top = top.at(at);
  if (!top.points().empty()) {
    // All windows that end by now: those that begin from one window before the first reading on.
    const Seconds window = state.plan->limits.rise_window.value;
    there.rise = trade::worst_rise(top, window, top.points().front().at, at - window);
  }
  Method method = method_at(state, c, there.rise);
  const Length floor = trade::set_by(latest_top(state.elements[element], bay),
                                     set_steps(state, element, SetSide::late), at);
  Shaken shaken = RunsOn{state, element, bay}.at(at, there.top, floor);
  there.method = method.greatest;
  there.no_method = std::move(method.why_not);
  there.rows = std::move(shaken.rows);
  there.profile = trade::pressure_profile(c.unit_weight, there.top, there.method, shaken.to);
  return there;
}

std::optional<WorstPressure> worst_pressure(const PourState& state, std::size_t element,
                                            Seconds until) {
  const Element& planned = state.plan->elements[element];
  if (planned.kind == ElementKind::deck) return std::nullopt;
  std::optional<WorstPressure> worst;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    const auto found = WorstOfBay{state, element, bay}.find(until);
    if (found && (!worst || found->greatest.pressure > worst->greatest.pressure)) worst = found;
  }
  return worst;
}

std::optional<Seconds> wait_before_running(const PourState& state, std::size_t element,
                                           std::size_t row, Seconds at) {
  const Element& planned = state.plan->elements[element];
  if (!planned.form_rating) return Seconds{};
  const Row& hung = planned.rows[row];
  const auto sets = set_steps(state, element, SetSide::late);
  const Length reach = reach_up(planned, hung);
  Seconds longest{};
  for (const BayReached& there : bays_reached(planned, hung)) {
    const trade::HeadLimit limit{heaviest(state, at), *planned.form_rating, there.pressed,
                                 hung.z + reach};
    const auto wait =
        trade::wait_before_running(latest_top(state.elements[element], there.bay), sets, limit, at);
    if (!wait) return std::nullopt;
    longest = std::max(longest, *wait);
  }
  return longest;
}

}  // namespace rb
