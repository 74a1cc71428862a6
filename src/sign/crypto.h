// Inside this room: the crypto library made ready.
#pragma once

#include <sodium.h>

#include <stdexcept>

namespace rb::sign {

/// Safe to call again.
inline void ready_crypto() {
  if (sodium_init() < 0) throw std::runtime_error("the system gives no random numbers");
}

}  // namespace rb::sign
