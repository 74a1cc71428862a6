// The signatures of a pour as the log has them, and what came after each. Whether a key's signature
// holds is asked of sign/, and of the book (store/book/verify.h).
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"

namespace rb {

struct SignatureState {
  EventRef ref = 0;
  event::Role role = event::Role::foreman;
  PersonId by;
  /// The enrolment of the key it was made with, into PourState::enrolments; none: no key.
  std::optional<std::size_t> enrolment{};
  std::size_t after = 0;      ///< events of the pour entered after what was signed, itself left out
  std::size_t unsettled = 0;  ///< of those, what may change what was signed: matters_after()
  bool operator==(const SignatureState&) const = default;
};

/// In the order they were signed; those taken back or set aside are none.
std::vector<SignatureState> signatures_of(const PourState& state);

/// Whether an event entered after a signature leaves the pour other than it was signed. Review,
/// other signatures and enrolments, and what comes after a pour by its nature (curing, stripping,
/// blemishes, repairs, photos, strengths) do not; a correction does as what it corrects.
bool matters_after(const PourState& state, EventRef ref);

}  // namespace rb
