#include "trade/shape/bounds.h"

#include <fmt/format.h>

#include <cmath>

namespace rb::trade {

namespace {

// In the unit of the bound; a unit without a measure (kVA, Hz) is one everywhere.
FactValue figure(double value, std::string_view unit) {
  constexpr double kGreatest = 1e7;
  if (std::abs(value) < kGreatest) {
    if (unit == "mm") return Amount{Measure::small_length, value / 1000};
    if (unit == "min") return Amount{Measure::age, value * 60};
    if (unit == "h") return Amount{Measure::long_span, value * 3600};
    if (const auto measure = measure_of_unit(unit)) return Amount{*measure, value};
  }
  return fmt::format("{:.6g}{}{}", value, unit.empty() ? "" : " ", unit);
}

}  // namespace

std::optional<Error> outside(Saying where, std::initializer_list<Bound> bounds) {
  for (const Bound& b : bounds) {
    if (std::isfinite(b.value) && b.value >= b.least && b.value <= b.most) continue;
    const Facts facts{{"name", Term{b.name}},
                      {"value", figure(b.value, b.unit)},
                      {"least", figure(b.least, b.unit)},
                      {"most", figure(b.most, b.unit)}};
    return Error{Error::Kind::input,
                 std::move(where),
                 {std::isnan(b.value) ? said("{name} is not a number")
                                      : said("{name} {value~} is not between {least~} and {most~}"),
                  facts},
                 {said("Give {name} between {least~} and {most~}"), facts}};
  }
  return std::nullopt;
}

}  // namespace rb::trade
