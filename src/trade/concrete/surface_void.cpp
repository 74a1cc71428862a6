#include "trade/concrete/surface_void.h"

#include "trade/shape/bounds.h"

namespace rb::trade {

double greatest_void_share(VoidClass voids) {
  switch (voids) {
    case VoidClass::svr1:
      return 0.012;
    case VoidClass::svr2:
      return 0.009;
    case VoidClass::svr3:
      return 0.006;
    case VoidClass::svr4:
      break;
  }
  return 0.003;
}

Result<double> void_share(Area voids, Area looked_at) {
  const double whole = in_square_metres(looked_at);
  if (auto fault =
          outside(said("surface voids"), {{said("area looked at"), whole, 1e-4, 1e4, "m2"}})) {
    return Failed(*std::move(fault));
  }
  if (auto fault = outside(said("surface voids"),
                           {{said("area of voids"), in_square_metres(voids), 0.0, whole, "m2"}})) {
    return Failed(*std::move(fault));
  }
  return in_square_metres(voids) / whole;
}

Result<std::optional<VoidClass>> void_class(double share) {
  if (auto fault =
          outside(said("surface voids"), {{said("share of voids"), share, 0.0, 1.0, ""}})) {
    return Failed(*std::move(fault));
  }
  for (const auto voids : {VoidClass::svr4, VoidClass::svr3, VoidClass::svr2, VoidClass::svr1}) {
    if (share <= greatest_void_share(voids)) return voids;
  }
  return std::nullopt;
}

}  // namespace rb::trade
