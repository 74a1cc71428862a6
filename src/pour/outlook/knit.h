// The joints of an element against the clock: since when the surface that stands now has been
// there, when it sets, and whether the joint under the concrete being placed has been knitted.
#pragma once

#include <optional>
#include <vector>

#include "pour/log/state.h"
#include "trade/dose/dose.h"

namespace rb {

/// A place where one lift's concrete meets the next, in one bay. Moments on the pour's clock.
struct Joint {
  int lift = 0;     ///< the lift whose top it is
  Length z;         ///< the height of that top
  Seconds came{};   ///< when concrete first stood there
  Seconds early{};  ///< the earliest that any concrete down to knit_depth under it sets: show this
  Seconds sets{};   ///< when the concrete at the joint itself sets (what knit-late judges by)
  std::optional<Seconds> covered;  ///< when concrete of the next lift began to lie on it
  std::optional<Seconds>
      knitted;        ///< when every spot along it had been worked since it was covered
  bool last = false;  ///< the top of the whole element: nothing is knitted to it
  bool operator==(const Joint&) const = default;

  [[nodiscard]] bool open() const { return !knitted && !last; }
};

/// How a joint was worked, as its worst spot along the bay has it (spots as the dose's: every 50
/// mm, judged at the middle).
struct Knitting {
  bool spots = false;           ///< false: an opening all along, nothing to knit
  std::optional<Seconds> when;  ///< when the last spot was worked; none while one has not been
  bool operator==(const Knitting&) const = default;
};
/// Of the joint at height z of a bay, covered at a moment; `insert` knits all along when it comes.
Knitting knitting(const trade::Face& face, std::size_t bay, Length z, Seconds covered,
                  std::optional<Seconds> insert);
/// The first insertion into a bay since a moment that counts (insertions.h), went knit_depth deep
/// into the lift below and worked down to the joint at height z.
std::optional<Seconds> first_deep_insert(const PourState& state, std::size_t element,
                                         std::size_t bay, Length z, Seconds since);

/// Whether somebody decided how the joint on a lift's top is to be treated: his word is in the log.
bool joint_decided(const PourState& state, std::size_t element, int lift, std::size_t bay);

/// One bay's clock.
struct KnitClock {
  std::size_t bay = 0;
  std::optional<Joint> surface;  ///< the surface standing now; none: no concrete yet
  std::optional<Joint> below;    ///< the joint the concrete being placed lies on, if it has come

  /// The joint that runs against the clock: the one below until it is knitted (or set unknitted:
  /// then it is too late for it), else the surface. None: nothing stands yet, or the bay is full.
  [[nodiscard]] const Joint* pending(Seconds at) const {
    if (below && below->open() && below->sets > at) return &*below;
    if (surface && surface->open()) return &*surface;
    return nullptr;
  }
  bool operator==(const KnitClock&) const = default;
};

/// Every bay of an element, from the left. `at` is at or after the last event. A spot counts as
/// worked when a row that reaches it (on either side) ran since it was covered, or an insertion
/// went at least knit_depth deep. Openings have no joint. A deck of one layer has only its surface.
std::vector<KnitClock> knit_clocks(const PourState& state, std::size_t element, Seconds at);

}  // namespace rb
