// How what was tapped stands with the disk, and what is said of it.
#pragma once

#include <optional>
#include <string>

#include "base/moment.h"
#include "base/result.h"
#include "screens/words/say.h"

namespace rb::screens {

struct Keeping {
  enum class State { kept, keeping, waiting, moved_away, read_only };
  State state = State::kept;
  std::size_t waiting = 0;        ///< taps not on the disk yet, of whatever pour
  std::size_t here = 0;           ///< of them, of the pour on the screen: the last of its log
  std::optional<Moment> since{};  ///< when the first of them was tapped, on the pour's clock
  std::string why{};              ///< what stands in the way, where something is known
  BookTrouble trouble = BookTrouble::none;  ///< the same where it has words in every language
  bool operator==(const Keeping&) const = default;
};

/// A disk that has not answered for so long is said to be waited for (our own choice).
inline constexpr Seconds kSlowDisk{2};

/// Whether a tap waits for more than the usual moment.
bool stuck(const Keeping& keeping, Moment now);

/// In a word or two: "kept", "keeping", "2 wait".
std::string keeping_short(const Say& say, const Keeping& keeping, Moment now);

/// What must be told: "1 tap waits for the disk since 05:12"; empty when nothing must.
std::string keeping_told(const Say& say, const Keeping& keeping, Moment now);

}  // namespace rb::screens
