// Lines of the record of tops as they were read and of joints between lifts.
#pragma once

#include <optional>
#include <string>

#include "base/moment.h"
#include "base/quantity.h"

namespace rb {

/// The top of a bay as it was read, or of bays side by side at the same height.
struct TopLine {
  Moment at;
  std::string element;
  int bay = 0, bay_to = 0;  ///< from 1; the same where it is of one
  Length height;
  bool fell = false;  ///< under what stood before, which stands on
  std::string by;
  bool operator==(const TopLine&) const = default;
};
/// Where one lift's concrete lies on another's, bay by bay, or bays side by side that fared alike.
struct JointLine {
  std::string element;
  int lift = 0;             ///< whose top it is
  int bay = 0, bay_to = 0;  ///< from 1; the same where it is of one
  Length height;
  Moment came, covered;
  Moment sets;                    ///< the early side
  std::optional<Moment> knitted;  ///< none: never
  bool in_time = false;           ///< before it set
  bool decided = false;           ///< somebody logged how it is to be treated
  bool operator==(const JointLine&) const = default;
};

}  // namespace rb
