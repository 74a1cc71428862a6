// How a screen speaks: the language, the units and the site's clock, and numbers written in them.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "base/moment.h"
#include "base/quantity.h"
#include "check/say_finding.h"
#include "pour/plan/plan.h"
#include "screens/words/words.h"

namespace rb::screens {

struct Say {
  Language language{};
  Units units = Units::si;
  std::chrono::minutes utc_offset{0};

  [[nodiscard]] std::string operator()(Word id) const { return word(language, id); }
  [[nodiscard]] Voice voice() const;
  template <class... Args>
  [[nodiscard]] std::string operator()(Word id, Args&&... args) const {
    return filled(language, id, std::forward<Args>(args)...);
  }

  /// "1.35 m", or feet and inches to the half inch: 4' 5 1/2" with proper signs.
  [[nodiscard]] std::string height(Length height) const;
  /// The same for the inside of a sentence where the unit was just said: "1.35".
  [[nodiscard]] std::string height_bare(Length height) const;
  [[nodiscard]] std::string pressure(Pressure pressure) const;  ///< "42 kPa", "877 psf"
  [[nodiscard]] std::string pressure_bare(Pressure pressure) const;
  [[nodiscard]] std::string rise(Velocity rise) const;  ///< "1.8 m/h", "5.9 ft/h"
  [[nodiscard]] std::string rise_bare(Velocity rise) const;
  [[nodiscard]] std::string temperature(Celsius temperature) const;  ///< "21 °C", "70 °F"
  [[nodiscard]] std::string clock(Moment moment) const;              ///< "05:12:07"
  [[nodiscard]] std::string clock_short(Moment moment) const;        ///< "05:12"
  [[nodiscard]] std::string day(Moment moment) const;                ///< "2026-03-02"
  /// A figure of a finding, from its SI unit to what is shown.
  [[nodiscard]] std::string amount(const Amount& figure) const;
};

/// "1:45", "1:02:03": minutes and seconds, hours when there are any. Never negative.
std::string timer(Seconds span);
/// "45 s", "12 min", "2 h 5 min": a span nobody counts in seconds.
std::string span_text(Seconds span);
/// Whole seconds still to go: never 0 while something is missing.
int whole_seconds(Seconds span);

}  // namespace rb::screens
