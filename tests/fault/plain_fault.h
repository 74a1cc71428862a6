// A disk for plain files, in memory, whose power can be cut at any step. Of what was not synced,
// chance keeps what it likes: a write wholly, a part of it, in blocks of any order, or not at all;
// a name not synced with its folder may be gone.
#pragma once

#include <map>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "store/file/plain_disk.h"

namespace rb::faults {

struct PlainData {
  std::string durable, now;
  struct Write {
    std::uint64_t at;
    std::string bytes;
  };
  std::vector<Write> pending;
};

class PlainFaultDisk : public store::PlainDisk {
 public:
  explicit PlainFaultDisk(std::mt19937& random) : random_(random) {}

  enum class Fault { power, io, full };
  /// The `n`th step from now fails; with power every one after it does too.
  void fail(Fault fault, int n) {
    fault_ = fault;
    left_ = n;
  }
  [[nodiscard]] bool failed() const { return failed_; }

  /// The power comes back: what survived is what stands.
  void power_up();

  store::Done<std::unique_ptr<store::PlainFile>> make(const std::filesystem::path& path) override;
  store::Done<std::unique_ptr<store::PlainFile>> open(const std::filesystem::path& path) override;
  store::Done<std::unique_ptr<store::PlainFile>> open_to_read(
      const std::filesystem::path& path) override {
    return open(path);
  }
  store::Done<void> rename(const std::filesystem::path& from,
                           const std::filesystem::path& to) override;
  store::Done<void> sync_folder(const std::filesystem::path& folder) override;

  /// Counts one step; what it comes to when it is the one to fail.
  std::error_code step();
  std::mt19937& random() { return random_; }

 private:
  using Names = std::map<std::filesystem::path, std::shared_ptr<PlainData>>;
  std::mt19937& random_;
  Names durable_, now_;
  Fault fault_ = Fault::power;
  int left_ = 0;  ///< 0: none to fail
  bool failed_ = false, dead_ = false;
};

}  // namespace rb::faults
