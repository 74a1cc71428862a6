// Insertions into one lift that are done wrong in one way are told as one thing, however often it
// was done so. Shared by insert-sparse and insert-long. Inside this room.
#pragma once

#include "check/rule.h"
#include "pour/outlook/insertions.h"

namespace rb {

/// The worst of them, and where and when they were.
struct WorstInsert {
  const InsertState* insert = nullptr;
  double share = 0;  ///< of the limit; the worst has most
  int times = 0;
  Seconds from{}, to{};
  std::optional<std::size_t> bay;
  bool one_bay = true;

  void take(const InsertState& other, double by);
  /// At its place and time; none was taken: not to be asked.
  [[nodiscard]] Finding told(const Rule& rule) const;
};

}  // namespace rb
