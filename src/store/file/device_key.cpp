#include "store/file/device_key.h"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <system_error>

#include "base/short_code.h"
#include "base/unfinished.h"
#include "store/file/row_text.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;
using Secret = std::array<unsigned char, crypto_sign_SECRETKEYBYTES>;
using Seed = std::array<unsigned char, crypto_sign_SEEDBYTES>;
static_assert(std::tuple_size_v<PublicKey> == crypto_sign_PUBLICKEYBYTES);
static_assert(std::tuple_size_v<Signature> == crypto_sign_BYTES);
static_assert(sizeof(Secret) == 64 && sizeof(Seed) == sizeof(Hash));

constexpr std::string_view kKeyFileMark = "risebook device key 1 ";

Failed trouble(const fs::path& file, const std::string& why) {
  return fail(Error::Kind::book, file.string(), "the key of this device cannot be used: " + why,
              "Pours are kept all the same; their heads go unsigned");
}

/// "<mark><64 hex digits of the seed>\n".
std::optional<Seed> read_seed(std::string_view text) {
  if (!text.starts_with(kKeyFileMark) || text.back() != '\n') return std::nullopt;
  text.remove_prefix(kKeyFileMark.size());
  text.remove_suffix(1);
  return read_hash(text);
}

std::string claimed(const HeadClaim& claim) {
  return to_hex(hash_of_text(fmt::format("signed head, version 1: {} {} {} {}", claim.uuid,
                                         claim.seq, to_hex(claim.hash), claim.made)));
}

/// A file of others' reading is no secret any more.
bool private_file(const fs::path& file) {
  std::error_code error;
  const auto may = fs::status(file, error).permissions();
  return !error && (may & (fs::perms::group_all | fs::perms::others_all)) == fs::perms::none;
}

Result<Seed> make_seed(const fs::path& file, PlainDisk& disk) {
  Seed seed{};
  ready_crypto();
  randombytes_buf(seed.data(), seed.size());
  // Made whole under another name first: a power cut leaves a key or none.
  const fs::path begun = fmt::format("{}.{}.unfinished", file.string(), randombytes_random());
  const auto text = std::string(kKeyFileMark) + to_hex(seed) + "\n";
  const auto made = [&]() -> Done<void> {
    const auto opened = disk.make(begun);
    if (!opened) return tl::unexpected(opened.error());
    if (auto done = (*opened)->write(0, text); !done) return done;
    if (auto done = (*opened)->sync(); !done) return done;
    if (auto done = disk.rename(begun, file); !done) return done;
    return disk.sync_folder(file.parent_path());
  }();
  if (made) return seed;
  std::error_code ignored;
  fs::remove(begun, ignored);
  return trouble(file, made.error().message());
}

}  // namespace

Result<DeviceKey> DeviceKey::ready(const fs::path& folder) {
  return ready(folder, plain_disk());
}

Result<DeviceKey> DeviceKey::ready(const fs::path& folder, PlainDisk& disk) {
  (void)make_folders(folder, 0700);  // one that could not be made shows in the next step
  return read(folder / "device.key", disk, true);
}

Result<DeviceKey> DeviceKey::standing(const fs::path& folder) {
  return read(folder / "device.key", plain_disk(), false);
}

Result<DeviceKey> DeviceKey::read(const fs::path& file, PlainDisk& disk, bool make) {
  if (!file.has_parent_path()) return trouble(file, "this user has no folder to keep it in");
  Seed seed{};
  if (const auto opened = disk.open_to_read(file)) {
    const auto text = read_all(**opened, 4096);
    if (!text) return trouble(file, text.error().message());
    const auto told = read_seed(*text);
    if (!told) return trouble(file, "its file does not hold one");
    if (!private_file(file)) return trouble(file, "others may read its file");
    seed = *told;
  } else if (make && opened.error() == std::errc::no_such_file_or_directory) {
    auto made = make_seed(file, disk);
    if (!made) return Failed{made.error()};
    seed = *made;
  } else {
    return trouble(file, opened.error().message());
  }
  DeviceKey key;
  const std::shared_ptr<Secret> secret(new Secret{}, [](Secret* gone) {
    sodium_memzero(gone->data(), gone->size());
    delete gone;
  });
  ready_crypto();
  crypto_sign_seed_keypair(key.public_.data(), secret->data(), seed.data());
  sodium_memzero(seed.data(), seed.size());
  key.secret_ = secret;
  return key;
}

Signature DeviceKey::sign(const HeadClaim& claim) const {
  return sign(std::string_view{claimed(claim)});
}

Signature DeviceKey::sign(std::string_view text) const {
  Signature signature{};
  crypto_sign_detached(signature.data(), nullptr,
                       reinterpret_cast<const unsigned char*>(text.data()), text.size(),
                       secret_->data());
  return signature;
}

bool holds(const Signed& head, const std::string& uuid) {
  return holds({uuid, head.seq, head.hash, head.made}, head.key, head.signature);
}

bool holds(const HeadClaim& claim, const PublicKey& key, const Signature& signature) {
  return holds(std::string_view{claimed(claim)}, key, signature);
}

bool holds(std::string_view text, const PublicKey& key, const Signature& signature) {
  ready_crypto();
  return crypto_sign_verify_detached(signature.data(),
                                     reinterpret_cast<const unsigned char*>(text.data()),
                                     text.size(), key.data()) == 0;
}

std::string short_name(const PublicKey& key) {
  return short_code(to_hex(key)).substr(0, 5);
}

}  // namespace rb::store
