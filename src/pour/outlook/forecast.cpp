#include "pour/outlook/forecast.h"

#include <algorithm>
#include <span>

#include "pour/outlook/next_steps.h"
#include "pour/plan/row_reach.h"
#include "pour/plan/verdicts.h"
#include "trade/shape/trend.h"

namespace rb {

namespace {

// The rate now is that of the last readings: enough to outvote a bad one, few enough to follow.
constexpr std::size_t kLastReadings = 7;
// Concrete this near a planned top is at it.
constexpr Length kAtTop = millimetres(20);

template <class T>
Foreseen<T> unknown(NoForecast why) {
  return {std::nullopt, why};
}
template <class T>
Foreseen<T> foreseen(T value) {
  return {std::move(value), NoForecast::none};
}

constexpr Seconds kNever = hours(1000);  // what takes longer is not foretold: no pour lasts so long

Seconds time_for(Length height, Velocity rise) {
  return Seconds{std::max(0.0, height.value()) / rise.value()};
}

// The pour's clock without the holds: concrete rises on this one.
Seconds placing_clock(const PourState& state, Seconds at) {
  Seconds held{};
  for (const HoldState& hold : state.holds) {
    const Seconds to = std::min(hold.to.value_or(at), at);
    if (to > hold.from) held += to - hold.from;
  }
  return at - held;
}

// What is known of one bay of the lift being placed.
struct BayLine {
  double share = 0;  // of the element's length
  bool full = false;
  Length standing;                    // as measured
  Seconds last{};                     // reading, on the placing clock
  std::optional<trade::Trend> trend;  // on the placing clock
  Length now;                         // reckoned on from the readings, never over the planned top
  Length read_last;                   // the line at the last reading
};

class Looking {
 public:
  Looking(const PourState& state, std::size_t element, Seconds at)
      : state_(state),
        planned_(state.plan->elements[element]),
        there_(state.elements[element]),
        element_(element),
        at_(at),
        placing_(state.placing(element)) {}

  Forecast tell() {
    Forecast f;
    f.element = element_;
    f.at = at_;
    if (placing_ != nullptr) {
      f.lift = placing_->lift;
      f.last_reading = placing_->last_reading;
    }
    f.planned_top = planned_top();
    draw_bays();
    for (const BayLine& bay : bays_) {
      f.top += bay.now * bay.share;
      f.bay_rise.push_back(rise_of(bay));
    }
    f.rise = rise_ = mean_rise();
    f.next_top = next_top_ = next_top();
    f.move = move();
    f.knit = knit_clocks(state_, element_, at_);
    f.knit_due = knit_due(f.knit);
    f.finish = finish();
    return f;
  }

 private:
  [[nodiscard]] std::optional<Length> planned_top() const {
    if (placing_ == nullptr) return std::nullopt;
    const auto index = static_cast<std::size_t>(placing_->lift) - 1;
    return index < planned_.lifts.size() ? std::optional{planned_.lifts[index]} : std::nullopt;
  }
  [[nodiscard]] Length last_top() const {
    return planned_.lifts.empty() ? planned_.rise_height() : planned_.lifts.back();
  }
  // No top stands over this while the lift is being placed.
  [[nodiscard]] Length ceiling() const { return planned_top().value_or(planned_.rise_height()); }

  void draw_bays() {
    for (std::size_t bay = 0; bay < planned_.bays.size(); ++bay) {
      BayLine line;
      line.share = planned_.bays[bay] / planned_.length;
      line.standing = line.now = line.read_last = there_.tops[bay].at(at_);
      if (placing_ != nullptr) read_bay(line, bay);
      bays_.push_back(std::move(line));
    }
  }

  void read_bay(BayLine& line, std::size_t bay) const {
    std::vector<trade::TrendPoint> points{
        {placing_clock(state_, placing_->began(bay)), placing_->bottom[bay]}};
    const auto& all = state_.readings;  // in order of time
    auto reading = std::lower_bound(all.begin(), all.end(), placing_->started,
                                    [](const TopReading& r, Seconds m) { return r.at < m; });
    for (; reading != all.end(); ++reading) {
      if (reading->element != element_ || reading->bay != bay) continue;
      points.push_back({placing_clock(state_, reading->at), reading->read});
    }
    line.last = points.back().at;
    line.full = placing_->bay_ended[bay] || line.standing >= ceiling() - kAtTop;
    if (line.full || points.size() < 2) return;
    const std::size_t used = std::min(points.size(), kLastReadings);
    line.trend = trade::trend(std::span{points}.last(used));
    if (!line.trend) return;
    const Length roof = std::max(ceiling(), line.standing);
    line.now = std::clamp(line.trend->at(placing_clock(state_, at_)), Length{}, roof);
    line.read_last = std::clamp(line.trend->at(line.last), Length{}, roof);
  }

  [[nodiscard]] NoForecast silent() const {
    if (state_.closed) return NoForecast::closed;
    if (placing_ == nullptr) return NoForecast::no_lift;
    if (!state_.holds.empty() && !state_.holds.back().to) return NoForecast::held;
    return NoForecast::none;
  }

  [[nodiscard]] Foreseen<RiseForecast> rise_of(const BayLine& bay) const {
    if (const NoForecast why = silent(); why != NoForecast::none) {
      return unknown<RiseForecast>(why);
    }
    if (bay.full) return unknown<RiseForecast>(NoForecast::done);
    if (!bay.trend) return unknown<RiseForecast>(NoForecast::few_readings);
    if (bay.trend->likely <= Velocity{}) return unknown<RiseForecast>(NoForecast::not_rising);
    return foreseen(
        RiseForecast{bay.trend->low, bay.trend->likely, bay.trend->high, bay.trend->readings});
  }

  [[nodiscard]] Foreseen<RiseForecast> mean_rise() const {
    if (const NoForecast why = silent(); why != NoForecast::none) {
      return unknown<RiseForecast>(why);
    }
    RiseForecast mean;
    bool read = false;
    for (const BayLine& bay : bays_) {
      if (!bay.trend) continue;
      read = true;
      mean.low += bay.trend->low * bay.share;
      mean.likely += bay.trend->likely * bay.share;
      mean.high += bay.trend->high * bay.share;
      mean.readings = std::max(mean.readings, bay.trend->readings);
    }
    if (!read) {
      return unknown<RiseForecast>(all_full() ? NoForecast::done : NoForecast::few_readings);
    }
    if (mean.likely <= Velocity{}) return unknown<RiseForecast>(NoForecast::not_rising);
    return foreseen(mean);
  }

  [[nodiscard]] bool all_full() const {
    return std::all_of(bays_.begin(), bays_.end(), [](const BayLine& bay) { return bay.full; });
  }
  // A window as far as it can be told.
  [[nodiscard]] Foreseen<Window> told(Window window) const {
    if (window.likely > at_ + kNever) return unknown<Window>(NoForecast::not_rising);
    if (window.latest && *window.latest > at_ + kNever) window.latest.reset();
    return foreseen(window);
  }
  [[nodiscard]] Window due_now() const { return {at_, at_, at_}; }

  // When the mean top reaches a height within the lift being placed.
  [[nodiscard]] Foreseen<Window> mean_reaches(Length z) const {
    if (!rise_) return unknown<Window>(rise_.why_not);
    Length now;
    Length read_last;
    for (const BayLine& bay : bays_) {
      now += bay.now * bay.share;
      read_last += bay.read_last * bay.share;
    }
    Window window;
    window.likely = at_ + time_for(z - now, rise_->likely);
    window.earliest = at_ + time_for(z - now - trade::kTopReadingError, rise_->high);
    if (rise_->low > Velocity{}) {
      window.latest = std::max(window.likely,
                               at_ + time_for(z - read_last + trade::kTopReadingError, rise_->low));
    }
    return told(window);
  }

  [[nodiscard]] Foreseen<Window> next_top() const {
    const NoForecast why = silent();
    if (why != NoForecast::none) return unknown<Window>(why);
    if (!planned_top()) return unknown<Window>(NoForecast::no_plan);
    if (all_full()) return foreseen(due_now());
    return mean_reaches(*planned_top());
  }

  // The lift the work is for: the one being placed, else the one after the latest.
  [[nodiscard]] int lift_of_now() const {
    if (placing_ != nullptr) return placing_->lift;
    int latest = 0;
    for (const LiftState& lift : there_.lifts) latest = std::max(latest, lift.lift);
    return latest + 1;
  }

  [[nodiscard]] Length bottom_of(int lift) const {
    if (lift < 2 || planned_.lifts.empty()) return Length{};
    const auto below = std::min(static_cast<std::size_t>(lift) - 2, planned_.lifts.size() - 1);
    return planned_.lifts[below];
  }

  // The first lift from now on that a row still has to work for; none: its work is done.
  [[nodiscard]] std::optional<int> next_service(std::size_t row, int now) const {
    std::optional<int> next;
    for (const int lift : planned_.rows[row].serves) {
      if (lift < now || (next && *next <= lift)) continue;
      const bool done =
          placing_ != nullptr && lift == now &&
          ran_enough(ran_since(state_, element_, row, placing_->started, at_), state_.plan->limits);
      if (!done) next = lift;
    }
    return next;
  }

  [[nodiscard]] Length reached_at(const Row& row, int lift) const {
    return std::max(bottom_of(lift), row.z - reach_up(planned_, row));
  }

  [[nodiscard]] MotorMove move() const {
    MotorMove move;
    if (state_.closed || planned_.rows.empty()) {
      move.due.why_not = state_.closed ? NoForecast::closed : NoForecast::no_plan;
      return move;
    }
    const int now = lift_of_now();
    for (std::size_t row = 0; row < planned_.rows.size(); ++row) {
      const bool hung = state_.hanging(element_, row) != nullptr;
      const auto next = next_service(row, now);
      if (hung && !next && state_.running(element_, row) == nullptr) move.idle.push_back(row);
      if (hung || !next) continue;
      const Length height = reached_at(planned_.rows[row], *next);
      if (move.rows.empty() || *next < move.lift) {
        move.rows.clear();
        move.lift = *next;
        move.height = height;
      }
      if (*next > move.lift) continue;
      move.rows.push_back(row);
      move.height = std::min(move.height, height);
    }
    move.due = move.rows.empty() ? unknown<Window>(NoForecast::done) : reaches(move);
    return move;
  }

  // When the top first gets to rows: within the lift the fastest bay counts, later lifts follow on.
  [[nodiscard]] Foreseen<Window> reaches(const MotorMove& move) const {
    const Length z = move.height;
    Length highest;
    for (const BayLine& bay : bays_) highest = std::max(highest, bay.now);
    const bool placing_it = placing_ != nullptr && move.lift == placing_->lift;
    if (placing_it && highest >= z) return foreseen(due_now());
    const Length top = ceiling();
    if (!rise_ && next_top_) {  // the lift is full, its end not yet tapped: the next may begin now
      return z <= top ? foreseen(Window{at_, at_, std::nullopt})
                      : unknown<Window>(NoForecast::not_rising);
    }
    if (!rise_) return unknown<Window>(rise_.why_not);
    if (z <= top) {
      auto window = mean_reaches(z);
      if (placing_it && window) first_bay_reaches(z, *window.value);
      return window;
    }
    if (!next_top_) return next_top_;
    Velocity fastest = rise_->high;
    for (const BayLine& bay : bays_) {
      if (bay.trend) fastest = std::max(fastest, bay.trend->high);
    }
    Window window = *next_top_;
    window.earliest += time_for(z - top, fastest);
    window.likely += time_for(z - top, rise_->likely);
    if (window.latest) *window.latest += time_for(z - top, slowest());
    return told(window);
  }

  void first_bay_reaches(Length z, Window& window) const {
    for (const BayLine& bay : bays_) {
      if (!bay.trend || bay.trend->high <= Velocity{}) continue;
      const Length left = z - bay.now - trade::kTopReadingError;
      window.earliest = std::min(window.earliest, at_ + time_for(left, bay.trend->high));
      if (bay.trend->likely <= Velocity{}) continue;
      window.likely = std::min(window.likely, at_ + time_for(z - bay.now, bay.trend->likely));
    }
  }

  // All that has been placed over all the time since the first lift began: pauses count.
  [[nodiscard]] std::optional<Velocity> pace() const {
    if (there_.lifts.empty()) return std::nullopt;
    const LiftState& first = there_.lifts.front();
    if (!first.ended && placing_ == &first) return std::nullopt;  // no pause has been seen yet
    Length gained_so_far;
    for (std::size_t bay = 0; bay < bays_.size(); ++bay) {
      gained_so_far += (bays_[bay].now - first.bottom[bay]) * bays_[bay].share;
    }
    const Seconds over = placing_clock(state_, at_) - placing_clock(state_, first.started);
    if (over <= Seconds{} || gained_so_far <= Length{}) return std::nullopt;
    return rate(gained_so_far, over);
  }

  [[nodiscard]] Velocity slowest() const {
    const auto whole = pace();
    return whole ? std::min(*whole, rise_->low) : rise_->low;
  }

  [[nodiscard]] Foreseen<Window> finish() const {
    if (state_.closed) return unknown<Window>(NoForecast::closed);
    Length left;
    for (const BayLine& bay : bays_) {
      left += std::max(Length{}, last_top() - bay.now) * bay.share;
    }
    if (left <= kAtTop) {
      return placing_ == nullptr ? unknown<Window>(NoForecast::done) : foreseen(due_now());
    }
    if (const NoForecast why = silent(); why == NoForecast::held) return unknown<Window>(why);
    const auto whole = pace();
    if (!rise_ && !whole) return unknown<Window>(rise_.why_not);
    const Velocity usual = whole ? *whole : rise_->likely;
    Velocity fast = usual;
    Velocity slow = usual;
    if (rise_) {
      fast = std::max(fast, rise_->high);
      slow = std::min(slow, rise_->low);
    }
    for (const LiftState& lift : there_.lifts) take_in(lift, fast, slow);
    Window window;
    window.likely = at_ + time_for(left, usual);
    window.earliest = at_ + time_for(left - trade::kTopReadingError, fast);
    if (slow > Velocity{}) window.latest = at_ + time_for(left + trade::kTopReadingError, slow);
    return told(window);
  }

  // A finished lift shows how fast it can go (its placing) and how slow (to the next lift's start).
  void take_in(const LiftState& lift, Velocity& fast, Velocity& slow) const {
    if (&lift == placing_) return;
    Length gain;
    for (std::size_t bay = 0; bay < bays_.size(); ++bay) {
      gain += (lift.top[bay] - lift.bottom[bay]) * bays_[bay].share;
    }
    const Seconds started = placing_clock(state_, lift.started);
    const Seconds placed = placing_clock(state_, lift.last_reading) - started;
    const Seconds cycle = placing_clock(state_, lift.next_start.value_or(at_)) - started;
    if (gain <= Length{} || placed <= Seconds{} || cycle <= Seconds{}) return;
    fast = std::max(fast, rate(gain, placed));
    slow = std::min(slow, rate(gain, cycle));
  }

  [[nodiscard]] Foreseen<Window> knit_due(const std::vector<KnitClock>& clocks) const {
    if (state_.closed) return unknown<Window>(NoForecast::closed);
    std::optional<Window> first;
    for (const KnitClock& clock : clocks) {
      const Joint* joint = clock.pending(at_);
      if (joint == nullptr) continue;
      const Window due{std::max(at_, joint->early), std::max(at_, joint->sets),
                       std::max(at_, joint->sets)};
      if (!first || due.earliest < first->earliest) first = due;
    }
    if (first) return foreseen(*first);
    const bool bare = std::none_of(clocks.begin(), clocks.end(),
                                   [](const KnitClock& clock) { return clock.surface; });
    return unknown<Window>(bare ? NoForecast::no_lift : NoForecast::done);
  }

  const PourState& state_;
  const Element& planned_;
  const ElementState& there_;
  std::size_t element_;
  Seconds at_;
  const LiftState* placing_;
  std::vector<BayLine> bays_;
  Foreseen<RiseForecast> rise_;
  Foreseen<Window> next_top_;
};

}  // namespace

Forecast forecast(const PourState& state, std::size_t element, Seconds at) {
  return Looking{state, element, at}.tell();
}

}  // namespace rb
