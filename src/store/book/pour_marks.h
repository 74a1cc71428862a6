// The pours of a book as its marks tell them: found without reading their events.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/ids.h"
#include "base/moment.h"

namespace rb {

/// A pour in the list of a book.
struct PourMark {
  enum class Closed {
    no,
    yes,
    ask,  ///< something was struck that may concern its close: fold() knows
  };
  PourId pour;
  std::string name, site;  ///< as its plan tells them, corrections since brought in
  Moment opened{};         ///< when its first event happened
  Closed closed = Closed::no;
  std::int64_t first = 0, last = 0;  ///< numbers of its first and its newest event
  bool operator==(const PourMark&) const = default;
};

/// A span of time, its end left out.
struct MomentSpan {
  Moment from{}, to{};
};

/// Which pours, and which part of their list.
struct PourQuery {
  std::string text{};  ///< in a name, a site or the id, ever; capitals (A to Z) or not
  std::optional<MomentSpan> when{};  ///< something happened then, or nearly: see Logbook::pours_in
  std::size_t first = 0, count = 20;
};

/// Those not known to be closed first, the latest first within each.
struct PourPage {
  std::vector<PourMark> pours;
  std::size_t all = 0;  ///< pours the query fits, on every page
};

}  // namespace rb
