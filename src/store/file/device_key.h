// The key of this device (Ed25519): made at the first start, its private half in a file of the user
// alone, its public half in each book. A head signed with it shows that the book stood so on this
// device: only who holds the file could sign another.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

#include "base/result.h"
#include "store/file/chain.h"
#include "store/file/plain_disk.h"

namespace rb::store {

using PublicKey = std::array<unsigned char, 32>;
using Signature = std::array<unsigned char, 64>;

/// What is signed of a head.
struct HeadClaim {
  std::string uuid;  ///< of the book
  std::int64_t seq = 0;
  Hash hash{};
  std::int64_t made = 0;  ///< ms since 1970 UTC
};

/// A head as it was signed.
struct Signed {
  std::int64_t seq = 0;
  Hash hash{};
  PublicKey key{};
  Signature signature{};
  std::int64_t made = 0;  ///< ms since 1970 UTC
  bool operator==(const Signed&) const = default;
};

class DeviceKey {
 public:
  /// The key in `folder` ("device.key"), made, with its folder, where there is none. A file there
  /// that is no key, or that others may read, is left as it is and an error. Of kind book.
  static Result<DeviceKey> ready(const std::filesystem::path& folder, PlainDisk& disk);
  static Result<DeviceKey> ready(const std::filesystem::path& folder);
  /// The same, but none is made.
  static Result<DeviceKey> standing(const std::filesystem::path& folder);

  [[nodiscard]] const PublicKey& public_key() const { return public_; }
  [[nodiscard]] Signature sign(const HeadClaim& claim) const;
  /// Of a text that begins by saying what it is: no claim of a head reads like it.
  [[nodiscard]] Signature sign(std::string_view text) const;

 private:
  DeviceKey() = default;
  static Result<DeviceKey> read(const std::filesystem::path& file, PlainDisk& disk, bool make);
  PublicKey public_{};
  std::shared_ptr<const std::array<unsigned char, 64>> secret_;  ///< wiped with the last of these
};

bool holds(const HeadClaim& claim, const PublicKey& key, const Signature& signature);
bool holds(std::string_view text, const PublicKey& key, const Signature& signature);
bool holds(const Signed& head, const std::string& uuid);

/// Five characters by which people tell devices apart.
std::string short_name(const PublicKey& key);

}  // namespace rb::store
