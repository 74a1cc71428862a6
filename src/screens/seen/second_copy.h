// What the screens say of the book's second copy: the mirror that follows it, a copy asked for, and
// the code of its head to photograph.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/moment.h"
#include "screens/words/say.h"

namespace rb::screens {

/// A folder that a mirror could be kept in.
struct MirrorPlace {
  std::string folder{};    ///< its whole path
  bool same_disk = false;  ///< on the book's own disk: lost with the tablet
  bool operator==(const MirrorPlace&) const = default;
};

/// A copy of the book asked for by hand.
struct CopySeen {
  enum class State { none, under_way, made, failed };
  State state = State::none;
  double done = 0;     ///< 0 to 1
  std::string says{};  ///< the file's name, or what failed
  bool operator==(const CopySeen&) const = default;
};

struct MirrorSeen {
  enum class Trouble { none, gone, full, forbidden, disk, book };
  std::string folder{};                  ///< empty: no mirror is wanted
  std::optional<std::int64_t> behind{};  ///< taps it lacks; none: not seen since the start
  /// When the first of them was kept, or when it was missed; by the wall clock.
  std::optional<Moment> since{};
  Trouble trouble = Trouble::none;
  bool same_disk = false;
  bool note_stuck = false;            ///< the note of the head beside the book cannot be written
  std::vector<MirrorPlace> places{};  ///< to choose from, as they were found last
  CopySeen copy{};
  CopySeen paper{};   ///< a run sheet; says its whole path
  CopySeen record{};  ///< of a day; the same
  bool operator==(const MirrorSeen&) const = default;
};

/// The last event of the book that is on the disk, and the short code of its hash.
struct HeadSeen {
  std::int64_t event = 0;
  std::string code{};
  bool operator==(const HeadSeen&) const = default;
};

/// How a mirror stands: its form on the screen goes by this, its words by mirror_words().
enum class MirrorLight { none, looking, even, behind };
MirrorLight mirror_light(const MirrorSeen& mirror);

/// "mirror up to date", "mirror 3 taps behind since 05:12", "no mirror".
std::string mirror_words(const Say& say, const MirrorSeen& mirror);

/// What is to be done or known about it besides; empty where nothing is.
std::string mirror_advice(const Say& say, const MirrorSeen& mirror);

}  // namespace rb::screens
