// What a form may bear at any moment of a pour, from what has been logged: the plan's pressure
// method at the fastest rise so far, and a full liquid head down to where every row that runs makes
// it press. The worst moment with its place. These figures advise; local codes, the form designer
// and licensed practice decide.
#pragma once

#include <optional>
#include <vector>

#include "base/result.h"
#include "pour/log/state.h"
#include "trade/pressure/pressure_profile.h"

namespace rb {

/// One bay's form at one moment.
struct FormPressure {
  std::size_t bay = 0;
  Seconds at{};
  Length top;
  Velocity
      rise;  ///< the fastest of the bay over rise_window_s so far: what the method is asked with
  std::optional<Pressure> method;  ///< its greatest; none where it does not hold
  std::optional<Error> no_method;  ///< why it does not hold; a full liquid head counts then
  std::vector<std::size_t> rows;   ///< running, that reach into the bay
  trade::PressureProfile profile;
};

/// Nothing for a deck, which bears no lateral pressure to speak of. `at` up to PourState::last.
std::optional<FormPressure> form_pressure(const PourState& state, std::size_t element,
                                          std::size_t bay, Seconds at);

struct WorstPressure {
  Seconds at{};  ///< a moment that has it: a reading, or the start or end of a run, test or load
  std::size_t bay = 0;
  trade::GreatestPressure greatest;
  std::optional<std::size_t> row;  ///< of the element: the running row it comes from
  std::optional<Error> no_method;  ///< why the method did not hold then
  std::optional<Pressure> rating;
  /// Rating less pressure: under zero when it is over. None without a rating.
  [[nodiscard]] std::optional<Pressure> margin() const {
    return rating ? std::optional<Pressure>{*rating - greatest.pressure} : std::nullopt;
  }
};

/// The worst over the whole pour up to a moment, exactly. Nothing for a deck or before concrete
/// came.
std::optional<WorstPressure> worst_pressure(const PourState& state, std::size_t element,
                                            Seconds until);

/// How long a row must rest until the head over plastic concrete is no more than the form's rating,
/// over all bays its motors reach, if no more concrete is placed (trade/rerun_wait.h). Zero: now.
/// Nothing: never, while anything in its reach is plastic. Zero, too, for an element without a
/// rating: there is nothing to hold it to.
std::optional<Seconds> wait_before_running(const PourState& state, std::size_t element,
                                           std::size_t row, Seconds at);

}  // namespace rb
