// Digits that somebody typed and nobody else should read: they lie in one place of fixed size and
// are wiped when they are done with, so that no memory that is handed on holds them.
#pragma once

#include <cstddef>
#include <cstring>
#include <string_view>

namespace rb {

class Secret {
 public:
  static constexpr std::size_t kMost = 64;

  Secret() = default;
  Secret(const Secret&) = default;
  Secret& operator=(const Secret&) = default;
  ~Secret() { wipe(); }

  /// Adds a digit; '<' takes the last one off. Anything else, and more than kMost, is passed over.
  void press(char key) {
    if (key == '<' && count_ > 0) digits_[--count_] = '\0';
    if (key >= '0' && key <= '9' && count_ < kMost) digits_[count_++] = key;
  }
  void wipe() {
    explicit_bzero(digits_, sizeof digits_);
    count_ = 0;
  }
  [[nodiscard]] std::size_t size() const { return count_; }
  [[nodiscard]] bool empty() const { return count_ == 0; }
  [[nodiscard]] std::string_view digits() const { return {digits_, count_}; }
  bool operator==(const Secret& other) const { return digits() == other.digits(); }

 private:
  char digits_[kMost]{};  // NOLINT(modernize-avoid-c-arrays): nothing but bytes to wipe
  std::size_t count_ = 0;
};

}  // namespace rb
