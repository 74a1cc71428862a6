#include "trade/shape/bounds.h"

#include <fmt/format.h>

#include <cmath>

namespace rb::trade {

std::optional<Error> outside(std::string_view where, std::initializer_list<Bound> bounds) {
  for (const Bound& b : bounds) {
    if (std::isfinite(b.value) && b.value >= b.least && b.value <= b.most) continue;
    const std::string span =
        fmt::format("{:.6g} and {:.6g}{}{}", b.least, b.most, b.unit.empty() ? "" : " ", b.unit);
    return Error{Error::Kind::input, std::string(where),
                 std::isnan(b.value)
                     ? fmt::format("{} is not a number", b.name)
                     : fmt::format("{} {:.6g}{}{} is not between {}", b.name, b.value,
                                   b.unit.empty() ? "" : " ", b.unit, span),
                 fmt::format("Give {} between {}", b.name, span)};
  }
  return std::nullopt;
}

}  // namespace rb::trade
