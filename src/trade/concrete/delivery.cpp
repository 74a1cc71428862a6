#include "trade/concrete/delivery.h"

#include "trade/shape/bounds.h"

namespace rb::trade {

Result<Celsius> coldest_placing(Length least_dimension) {
  if (auto fault = outside(said("section"), {{said("least dimension"), in_metres(least_dimension),
                                              0.01, 100.0, "m"}})) {
    return Failed(*std::move(fault));
  }
  if (least_dimension < inches(12.0)) return fahrenheit(55.0);
  if (least_dimension < inches(36.0)) return fahrenheit(50.0);
  if (least_dimension <= inches(72.0)) return fahrenheit(45.0);
  return fahrenheit(40.0);
}

}  // namespace rb::trade
