// A PIN: what a person types to sign. Held no longer than it is needed, and wiped behind.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace rb::sign {

inline constexpr std::size_t kLeastDigits = 6;
inline constexpr std::size_t kMostDigits = 64;

class Pin {
 public:
  /// Digits only, six at least, and neither one digit again and again nor digits in a row
  /// (123456, 987654): those are guessed first. An error of kind input tells none of it.
  static Result<Pin> read(std::string_view typed);
  Pin(Pin&& other) noexcept;
  Pin& operator=(Pin&& other) noexcept;
  Pin(const Pin&) = delete;
  Pin& operator=(const Pin&) = delete;
  ~Pin();

  [[nodiscard]] std::string_view digits() const { return digits_; }

 private:
  Pin() = default;
  std::string digits_;
};

/// Overwrites a text somebody typed a PIN into.
void wipe(std::string& text);

}  // namespace rb::sign
