// How a signature or a key that was asked for by touch stands with the program.
#pragma once

#include <optional>
#include <vector>

#include "base/ids.h"
#include "base/result.h"

namespace rb::screens {

struct SigningSeen {
  enum class State {
    idle,
    trying,   ///< the PIN is tried, or a key made
    waiting,  ///< earlier taps are not on the disk yet: what is signed must stand there
    refused,  ///< see `why`
    keeping,  ///< made, and not on the disk yet
    made      ///< it is on the disk
  };
  State state = State::idle;
  std::optional<Error> why{};
  /// People of the pour who have a key from an earlier pour of this book, and none in this one.
  std::vector<PersonId> carried{};
  bool looked = false;  ///< `carried` was looked for
};

}  // namespace rb::screens
