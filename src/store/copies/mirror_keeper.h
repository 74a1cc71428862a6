// Keeps the mirror of a book up to date on a thread of its own: told of each event that was kept,
// it reads what is new from the book by a connection of its own and adds it to the mirror. A folder
// that is gone (the stick pulled) is waited for and caught up with. It never delays a tap.
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/moment.h"
#include "store/copies/mirror.h"

namespace rb::store {

/// How far a mirror follows.
struct MirrorStatus {
  std::filesystem::path folder;          ///< empty: none is wanted
  std::filesystem::path file;            ///< empty: not yet found or begun
  std::int64_t kept = 0;                 ///< number of the book's last event
  std::optional<std::int64_t> mirrored;  ///< of the mirror's last; none: not seen since the start
  std::optional<Moment> since;           ///< when the first event that it lacks was kept
  std::optional<MirrorTrouble> trouble;
  std::vector<std::string> told;  ///< mirrors passed over, events left out: to be read once
  bool same_disk = false;         ///< it lies on the book's own disk: lost with the tablet
  [[nodiscard]] std::int64_t behind() const { return kept - mirrored.value_or(0); }
};

class MirrorKeeper {
 public:
  struct Hooks {
    std::function<Moment()> now;        ///< the wall clock
    std::function<void()> changed;      ///< the status did; called on the mirror's thread
    std::shared_ptr<PlainDisk> disk{};  ///< none: the system's own
  };
  /// `folder` empty: none is wanted for now. It is never made: a stick that is not there is not
  /// replaced by a folder of its name.
  MirrorKeeper(std::filesystem::path book, std::filesystem::path folder, Hooks hooks);
  ~MirrorKeeper();

  /// The book acknowledged all up to `seq`. Any thread; returns at once.
  void note_kept(std::int64_t seq, Moment at);
  /// Something may have been kept: looks into the book at once.
  void look_again();
  /// Goes to another folder, or to none.
  void use(const std::filesystem::path& folder);
  [[nodiscard]] MirrorStatus status() const;

 private:
  struct Inside;
  std::shared_ptr<Inside> inside_;
  std::unique_ptr<class SideThread> thread_;
};

}  // namespace rb::store
