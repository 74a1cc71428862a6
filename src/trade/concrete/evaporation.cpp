#include "trade/concrete/evaporation.h"

#include <algorithm>
#include <cmath>

#include "trade/shape/bounds.h"

namespace rb::trade {

Result<Evaporation> evaporation(Celsius concrete, const Weather& weather) {
  constexpr double kColdest = -18.0;  // the formula knows none colder
  constexpr double kHottest = 80.0;
  const double wind = in_metres_per_hour(weather.wind) / 1000.0;  // km/h
  if (auto fault =
          outside(said("evaporation"),
                  {{said("concrete temperature"), concrete.degrees, kColdest, kHottest, "degC"},
                   {said("air temperature"), weather.air.degrees, kColdest, kHottest, "degC"},
                   {said("relative humidity"), weather.humidity.share * 100, 0.0, 100.0, "%"},
                   {said("wind"), wind, 0.0, 200.0, "km/h"}})) {
    return Failed(*std::move(fault));
  }
  const auto term = [](Celsius t) { return std::pow(t.degrees - kColdest, 2.5); };
  const double rate =
      5.0 * (term(concrete) - weather.humidity.share * term(weather.air)) * (wind + 4.0) * 1e-6;
  return Evaporation{std::max(0.0, rate)};
}

}  // namespace rb::trade
