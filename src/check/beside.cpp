#include "check/beside.h"

#include <algorithm>

namespace rb {

std::optional<Beside> came_beside(const Look& look, const LiftReport& report, std::size_t bay,
                                  std::size_t beside) {
  const LiftState& lift = look.lift(report);
  const auto& tops = look.state.elements[report.element].tops;
  const Length low = lift.bottom[bay];
  const Length high = std::min(lift.top[bay], tops[beside].standing());
  if (high <= low) return std::nullopt;
  const Length z = (low + high) * 0.5;
  const auto came = tops[bay].reached(z);
  const auto stood = tops[beside].reached(z);
  if (!came || !stood || *came <= *stood) return std::nullopt;
  return Beside{*came, *stood};
}

}  // namespace rb
