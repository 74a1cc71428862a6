// How far an element's concrete has hardened since its last came: maturity by the temperatures read
// in it, and the specimens of its last load.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"
#include "trade/concrete/setting.h"

namespace rb {

/// When the last concrete came into an element, by its tops; none: none came.
std::optional<Seconds> last_concrete(const PourState& state, std::size_t element);
/// When the last of it has set for certain (the late side).
std::optional<Seconds> last_set(const PourState& state, std::size_t element);

/// What the readings of one place tell. Maturity counts from the first reading after the last
/// concrete came (or from then, where a reading lies before it) to the last reading of the place:
/// between two it runs straight, and where nothing was read nothing is gained (our own choice). Air
/// never stands in for concrete.
struct MaturityAt {
  std::optional<Length> z, x;
  std::size_t readings = 0;
  Seconds from{}, to{};
  Seconds equivalent_age{};          ///< at 20 degC, the least its Q allows
  trade::Maturity nurse_saul;        ///< over 0 degC
  std::optional<Pressure> strength;  ///< by the plan's curve; none: no curve, or not yet on it
};
/// Place by place, in the order they were first read; readings after `until` are not looked at.
std::vector<MaturityAt> maturity(const PourState& state, std::size_t element, Seconds until);

/// The strength shown at a moment of an element's last concrete.
struct StrengthShown {
  /// By the curve, at the place that hardened least; none: not shown.
  std::optional<Pressure> by_maturity;
  /// By the oldest specimens, no older than the concrete, of the loads its last is of: the lowest.
  std::optional<Pressure> by_specimens;
  /// What a form is stripped by: the less of the two where both are known (our own choice, the
  /// careful one).
  [[nodiscard]] std::optional<Pressure> counts() const;
};
StrengthShown strength_shown(const PourState& state, std::size_t element, Seconds at);
/// Whether anything can show the strength of an element's concrete at a moment: a curve, or a
/// specimen of its last load.
bool strength_judged(const PourState& state, std::size_t element, Seconds at);

/// How long an element was under curing after its last concrete came, breaks left out, up to a
/// moment.
Seconds cured_for(const PourState& state, std::size_t element, Seconds came, Seconds until);

}  // namespace rb
