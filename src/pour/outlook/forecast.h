// What is to come on an element, from what has been logged: how fast the concrete rises now, when
// the top of the lift is reached, when the next motors must hang, when the surface sets, when all
// is placed. Every answer is a range, and says why there is none. Plain values; no words, no rules.
// Moments are on the pour's clock (PourState::moment() turns them into times of day).
//
// The rise is the median slope of the last readings of the lift being placed (trade/trend.h), bay
// by bay, holds taken out; one bad reading does not move it. An element's rise is that of its mean
// top: bays that are full, or have not been begun, count as standing. So it is right for a lift
// that rises evenly and for one filled bay after bay. Ranges: earliest as if all readings erred to
// the fast side and the concrete, come on at the likely rate since the last of them, rises at the
// fastest from now on; latest as if it had stood still since and rises at the slowest. They are
// reckoned, not promised.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"
#include "pour/outlook/knit.h"

namespace rb {

/// Why there is no forecast.
enum class NoForecast {
  none,          ///< there is one
  closed,        ///< the pour is closed
  held,          ///< the pour is on hold: nothing rises until it is resumed
  no_lift,       ///< no lift is being placed
  few_readings,  ///< fewer than two readings (the lift's start counts as one)
  not_rising,    ///< the readings show no rise
  no_plan,       ///< the plan does not say (no top for the lift, no rows)
  done,          ///< nothing of it is left to come
};

/// Of a rate of rise. `low` may be zero or less: it cannot be told that it rises at all.
struct RiseForecast {
  Velocity low, likely, high;
  int readings = 0;  ///< it rests on, the lift's start among them
};

/// Of a moment. Never before the moment asked at: what is due already is due now.
struct Window {
  Seconds earliest{}, likely{};
  std::optional<Seconds> latest;  ///< none: no end can be told (or none within 1000 h)
  bool operator==(const Window&) const = default;
};

template <class T>
struct Foreseen {
  std::optional<T> value;
  NoForecast why_not = NoForecast::none;  ///< none exactly when there is a value
  explicit operator bool() const { return value.has_value(); }
  const T& operator*() const { return *value; }
  const T* operator->() const { return &*value; }
};

/// The next rows that must hang, and what may come down for them.
struct MotorMove {
  std::vector<std::size_t> rows;  ///< planned for `lift`, not hung; indices into the element's rows
  std::vector<std::size_t> idle;  ///< hung at rest, serving no lift from the one being placed on
  int lift = 0;                   ///< the first lift the rows serve
  Length height;                  ///< the top at which the first of them is reached
  Foreseen<Window> due;           ///< when the top gets there
};

struct Forecast {
  std::size_t element = 0;
  Seconds at{};
  std::optional<int> lift;              ///< being placed
  std::optional<Seconds> last_reading;  ///< of that lift; the older it is, the less is known
  Length top;                           ///< mean top now, reckoned on from the readings
  Foreseen<RiseForecast> rise;          ///< of the mean top
  std::vector<Foreseen<RiseForecast>> bay_rise;  ///< of each bay; a full bay says done
  std::optional<Length> planned_top;             ///< of the lift being placed
  Foreseen<Window> next_top;                     ///< when it is reached
  MotorMove move;               ///< empty rows, `due` says done: none is left to hang
  std::vector<KnitClock> knit;  ///< bay by bay
  Foreseen<Window> knit_due;    ///< the first of the bays' open joints sets (early .. sets)
  Foreseen<Window> finish;      ///< the last planned top (or the element's height)
};

/// `at` is at or after the last event (PourState::last); what is logged later is not left out.
Forecast forecast(const PourState& state, std::size_t element, Seconds at);

}  // namespace rb
