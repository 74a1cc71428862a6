// Form pressure by the method the plan names, and the rate of rise it allows. The front of
// pressure_aci347.h, pressure_ciria108.h and pressure_din18218.h, where the formulas and their
// sources are. These figures advise; local codes, the form designer and licensed practice decide.
#pragma once

#include <optional>
#include <string>

#include "trade/pressure/pressure_case.h"

namespace rb::trade {

/// The greatest lateral pressure on the form at a rate of rise, never over the full liquid head.
/// Never falls as the rate grows. Errors: input (the case or the rate makes no sense), refused (the
/// method does not hold here: a full liquid head is to be assumed).
Result<Pressure> method_pressure(PressureMethod method, const PressureCase& c, Velocity rise);

/// The greatest rate of rise at which the method's pressure does not exceed the rating, to the last
/// bits of a double: at that rate it does not exceed, just above it does, or the method ends there.
/// Nothing: no rate can exceed it (the rating bears the full liquid head). Zero: even the least
/// pressure exceeds it, or is reached exactly at no rise. Errors as method_pressure, but a rate the
/// method does not cover counts as exceeding; a rating not over 0 up to 10 MPa is an input error.
Result<std::optional<Velocity>> rise_for_rating(PressureMethod method, const PressureCase& c,
                                                Pressure rating);

/// What to say where external vibrators work on the form: the reductions of all three methods are
/// for internal vibration, so the full liquid head is to be assumed over the height the vibrators
/// reach. Nothing for a case without external vibration.
/// Sources: DIN 18218 and a public concrete lexicon on fresh concrete pressure (read); for ACI 347
/// and CIRIA 108 from memory.
std::optional<std::string> vibration_caution(PressureMethod method, const PressureCase& c);

}  // namespace rb::trade
