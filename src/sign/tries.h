// Tries of a PIN slow down: three wrong ones are free, then each costs a wait twice as long as the
// one before. What was tried is kept in a file of the user's (app/pin_tries), so that a restart
// clears nothing; who can delete that file or step the clock on can pass a wait, and who has a copy
// of the book needs no tablet to try: against that stands what a try costs.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "base/hex.h"
#include "base/moment.h"
#include "base/quantity.h"

namespace rb::sign {

inline constexpr int kFreeTries = 3;
inline constexpr Seconds kFirstWait{30};
inline constexpr Seconds kLongestWait{3600};

struct Tries {
  int wrong = 0;  ///< one after the other
  Moment last{};  ///< the last of them
  bool operator==(const Tries&) const = default;
};

/// How long the next try must wait; none or less: it may be made. By a clock set back to before the
/// last try the whole wait begins anew.
Seconds wait_left(const Tries& tries, Moment now);

/// Of every key that was tried wrong.
class TriesList {
 public:
  /// As text() has it; what cannot be read counts as tried as often as is free, for every key.
  static TriesList read(std::string_view text, Moment now);
  [[nodiscard]] std::string text() const;

  [[nodiscard]] Tries of(const Hex& key) const;
  /// To be kept before the try is made: a power cut saves nobody a try.
  void add(const Hex& key, Moment now);
  void clear(const Hex& key);
  bool operator==(const TriesList&) const = default;

 private:
  std::map<std::string, Tries> keys_;
  Tries others_{};
};

}  // namespace rb::sign
