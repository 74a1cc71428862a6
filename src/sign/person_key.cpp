#include "sign/person_key.h"

#include <algorithm>

#include "base/short_code.h"
#include "sign/crypto.h"

namespace rb::sign {

namespace {

constexpr std::size_t kNonce = crypto_secretbox_NONCEBYTES;
constexpr std::size_t kBox = crypto_secretbox_MACBYTES + crypto_sign_SEEDBYTES;
static_assert(kNonce + kBox == 72 && crypto_pwhash_SALTBYTES == 16);
static_assert(crypto_sign_SECRETKEYBYTES == 64 && crypto_sign_PUBLICKEYBYTES == 32);

/// Bytes that are wiped when they go.
template <std::size_t N>
struct Secret {
  std::array<unsigned char, N> bytes{};
  Secret() = default;
  Secret(const Secret&) = delete;
  Secret& operator=(const Secret&) = delete;
  ~Secret() { sodium_memzero(bytes.data(), bytes.size()); }
};
using BoxKey = Secret<crypto_secretbox_KEYBYTES>;
using Seed = Secret<crypto_sign_SEEDBYTES>;

Result<void> key_of_pin(BoxKey& key, const Pin& pin, const unsigned char* salt,
                        const PinCost& cost) {
  const auto digits = pin.digits();
  const int failed =
      crypto_pwhash(key.bytes.data(), key.bytes.size(), digits.data(), digits.size(), salt,
                    static_cast<unsigned long long>(cost.rounds),
                    static_cast<std::size_t>(cost.memory_kib) * 1024, crypto_pwhash_ALG_ARGON2ID13);
  if (failed == 0) return {};
  return fail(Error::Kind::book, said("the PIN"),
              said("cannot be turned into a key: the memory that takes is not to be had"),
              said("Close other programs and try again"));
}

Failed no_key() {
  return fail(Error::Kind::input, said("the key of the person"), said("is not whole in the book"),
              said("Enrol anew"));
}

}  // namespace

struct PersonKeyMaker {
  static PersonKey make(const Seed& seed) {
    PersonKey key;
    const std::shared_ptr<std::array<unsigned char, 64>> secret(
        new std::array<unsigned char, 64>{}, [](std::array<unsigned char, 64>* gone) {
          sodium_memzero(gone->data(), gone->size());
          delete gone;
        });
    std::array<unsigned char, crypto_sign_PUBLICKEYBYTES> open{};
    crypto_sign_seed_keypair(open.data(), secret->data(), seed.bytes.data());
    key.key_ = hex_of(open);
    key.secret_ = secret;
    return key;
  }
};

Hex PersonKey::sign(std::string_view text) const {
  std::array<unsigned char, crypto_sign_BYTES> signature{};
  crypto_sign_detached(signature.data(), nullptr,
                       reinterpret_cast<const unsigned char*>(text.data()), text.size(),
                       secret_->data());
  return hex_of(signature);
}

Result<SealedKey> make_key(const Pin& pin, const PinCost& cost) {
  ready_crypto();
  std::array<unsigned char, crypto_pwhash_SALTBYTES> salt{};
  std::array<unsigned char, kNonce + kBox> sealed{};
  Seed seed;
  BoxKey key;
  randombytes_buf(salt.data(), salt.size());
  randombytes_buf(sealed.data(), kNonce);
  randombytes_buf(seed.bytes.data(), seed.bytes.size());
  if (auto done = key_of_pin(key, pin, salt.data(), cost); !done) return Failed{done.error()};
  crypto_secretbox_easy(sealed.data() + kNonce, seed.bytes.data(), seed.bytes.size(), sealed.data(),
                        key.bytes.data());
  return SealedKey{PersonKeyMaker::make(seed).key(), hex_of(salt), cost, hex_of(sealed)};
}

Result<PersonKey> open_key(const SealedKey& sealed, const Pin& pin) {
  ready_crypto();
  const auto salt = bytes_of(sealed.salt), box = bytes_of(sealed.sealed);
  if (!salt || salt->size() != crypto_pwhash_SALTBYTES || !box || box->size() != kNonce + kBox) {
    return no_key();
  }
  BoxKey key;
  if (auto done = key_of_pin(key, pin, salt->data(), sealed.cost); !done) {
    return Failed{done.error()};
  }
  Seed seed;
  if (crypto_secretbox_open_easy(seed.bytes.data(), box->data() + kNonce, kBox, box->data(),
                                 key.bytes.data()) != 0) {
    return fail(Error::Kind::refused, said("the PIN"), said("is not the right one"),
                said("Enter it again; whoever has forgotten it enrols anew, before a witness"));
  }
  PersonKey person = PersonKeyMaker::make(seed);
  if (person.key() != sealed.key) return no_key();
  return person;
}

bool holds(const Hex& key, std::string_view text, const Hex& signature) {
  ready_crypto();
  const auto open = bytes_of(key), made = bytes_of(signature);
  if (!open || open->size() != crypto_sign_PUBLICKEYBYTES || !made ||
      made->size() != crypto_sign_BYTES) {
    return false;
  }
  return crypto_sign_verify_detached(made->data(),
                                     reinterpret_cast<const unsigned char*>(text.data()),
                                     text.size(), open->data()) == 0;
}

std::string fingerprint(const Hex& key) {
  return short_code(key.digits);
}

}  // namespace rb::sign
