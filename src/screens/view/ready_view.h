// The walk-down before a pour: what is looked at, and what was answered last. Nothing here says
// that a pour may begin; it shows what is open.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "pour/log/state.h"
#include "screens/words/say.h"

namespace rb::screens {

/// A point of the walk-down with its latest answer.
struct ReadyLine {
  std::string item{};             ///< as the script names it
  std::optional<Word> word{};     ///< none: a point the script added, shown as it is written
  std::optional<bool> ok{};       ///< none: not answered
  std::optional<Moment> since{};  ///< when it was answered
  std::string note{};
  bool operator==(const ReadyLine&) const = default;
};

/// The thirteen points in the order they are walked, then those only the script names.
std::vector<ReadyLine> make_ready_lines(const PourState& state);

struct ReadyCounts {
  int all = 0, answered = 0, not_ok = 0;
  [[nodiscard]] int open() const { return all - answered + not_ok; }  ///< unanswered or not OK
};
ReadyCounts count(const std::vector<ReadyLine>& lines);

/// The name of a point in the screen's language.
std::string ready_name(const Say& say, const std::string& item);

}  // namespace rb::screens
