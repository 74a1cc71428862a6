// A person's own key (Ed25519), its secret half sealed with what a PIN gives (Argon2id, then
// XSalsa20 and Poly1305). What it signs proves this much: whoever signed knew this PIN on a tablet
// that held this book. Who has a copy of the book may try PINs on it, and pays for each try what
// Argon2id costs.
#pragma once

#include <array>
#include <memory>
#include <string>
#include <string_view>

#include "base/hex.h"
#include "base/result.h"
#include "sign/pin.h"

namespace rb::sign {

/// What a try of a PIN costs. The library's measure of what may be asked of somebody who waits is
/// two passes over 64 MiB; this project takes three.
struct PinCost {
  int rounds = 3;
  int memory_kib = 65536;
  bool operator==(const PinCost&) const = default;
};

/// A key as an enrolment keeps it.
struct SealedKey {
  Hex key;  ///< the public half
  Hex salt;
  PinCost cost;
  Hex sealed;
  bool operator==(const SealedKey&) const = default;
};

/// The secret half, wiped with the last of these.
class PersonKey {
 public:
  [[nodiscard]] const Hex& key() const { return key_; }
  /// Of a text, 64 bytes.
  [[nodiscard]] Hex sign(std::string_view text) const;

 private:
  friend struct PersonKeyMaker;
  PersonKey() = default;
  Hex key_;
  std::shared_ptr<const std::array<unsigned char, 64>> secret_;
};

/// A new key. An error of kind book where the memory a PIN costs is not to be had.
Result<SealedKey> make_key(const Pin& pin, const PinCost& cost = {});

/// An error of kind refused where the PIN is not the one it was sealed with; of kind input where
/// what was kept is no sealed key.
Result<PersonKey> open_key(const SealedKey& sealed, const Pin& pin);

bool holds(const Hex& key, std::string_view text, const Hex& signature);

/// Ten characters by which people tell keys apart.
std::string fingerprint(const Hex& key);

}  // namespace rb::sign
