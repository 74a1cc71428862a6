#include "sign/pin.h"

#include <sodium.h>

#include <algorithm>
#include <utility>

#include "sign/crypto.h"

namespace rb::sign {

namespace {

// From each digit to the next the same step of none, up one or down one.
bool guessed_first(std::string_view digits) {
  for (const int step : {0, 1, -1}) {
    bool all = true;
    for (std::size_t i = 1; i < digits.size(); ++i) all = all && digits[i] - digits[i - 1] == step;
    if (all) return true;
  }
  return false;
}

}  // namespace

Result<Pin> Pin::read(std::string_view typed) {
  const auto refuse = [](Said what) {
    return fail(Error::Kind::input, said("the PIN"), what, said("Choose six digits or more"));
  };
  if (typed.find_first_not_of("0123456789") != std::string_view::npos) {
    return refuse(said("holds something other than digits"));
  }
  if (typed.size() < kLeastDigits) return refuse(said("is shorter than six digits"));
  if (typed.size() > kMostDigits) return refuse(said("is longer than 64 digits"));
  if (guessed_first(typed)) {
    return refuse(said("is one digit again and again, or digits in a row: guessed first"));
  }
  Pin pin;
  pin.digits_.reserve(kMostDigits + 1);  // never moved: no copy of it is left behind
  pin.digits_ = typed;
  return pin;
}

// What is moved goes with its memory: none of it is copied.
Pin::Pin(Pin&& other) noexcept : digits_(std::move(other.digits_)) {
  wipe(other.digits_);
}

Pin& Pin::operator=(Pin&& other) noexcept {
  if (this == &other) return *this;
  wipe(digits_);
  digits_ = std::move(other.digits_);
  wipe(other.digits_);
  return *this;
}

Pin::~Pin() {
  wipe(digits_);
}

void wipe(std::string& text) {
  ready_crypto();
  sodium_memzero(text.data(), text.size());
  text.clear();
}

}  // namespace rb::sign
