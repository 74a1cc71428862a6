// A layer over SQLite's own file layer that fails on purpose, and that knows what a disk would hold
// after the power went: what was synced, and of the rest whatever part chance left.
#pragma once

#include <chrono>
#include <filesystem>
#include <random>
#include <string>

namespace rb::faults {

enum class Fault {
  none,
  write,  ///< writes half of what it should, then an I/O error
  full,   ///< writes half of what it should, then: disk full
  sync,   ///< nothing is synced
  read,   ///< reads nothing
  power,  ///< nothing changes the disk any more, from here on
};

/// While one stands, every book is opened through it. One at a time.
class FaultyDisk {
 public:
  FaultyDisk();
  FaultyDisk(const FaultyDisk&) = delete;
  FaultyDisk& operator=(const FaultyDisk&) = delete;
  ~FaultyDisk();

  /// The nth call (from 1) that `fault` can meet fails; `lasting`: so do all that follow.
  void fail(Fault fault, int nth, bool lasting = false);
  /// From now on every sync takes so long; zero: no time.
  void slow(std::chrono::milliseconds a_sync);
  /// The disk works again.
  void heal();
  [[nodiscard]] bool struck() const;

  enum class Left { nothing, everything, chance };
  /// With every book closed: leaves in `folder` what a disk would hold had the power gone at the
  /// last fault. Of the bytes not synced it keeps nothing, everything, or, sector by sector and in
  /// no order, what `random` says.
  void lose_power(const std::filesystem::path& folder, Left left, std::mt19937& random);
};

}  // namespace rb::faults
