#include "store/file/chain.h"

#include <fmt/format.h>
#include <sodium.h>

#include <bit>
#include <stdexcept>
#include <string_view>

namespace rb::store {

namespace {

/// Every field goes in behind its length (8 bytes, low byte first): no two rows read the same.
class Hasher {
 public:
  explicit Hasher(std::string_view what) {
    ready_crypto();
    crypto_generichash_init(&state_, nullptr, 0, std::tuple_size_v<Hash>);
    add(what);
  }
  void add(std::string_view bytes) {
    put(bytes.size());
    crypto_generichash_update(&state_, reinterpret_cast<const unsigned char*>(bytes.data()),
                              bytes.size());
  }
  void add(const Hash& hash) {
    add(std::string_view{reinterpret_cast<const char*>(hash.data()), hash.size()});
  }
  void add(std::int64_t number) {
    put(sizeof number);
    put(static_cast<std::uint64_t>(number));
  }
  void add(double number) { add(std::bit_cast<std::int64_t>(number)); }
  Hash done() {
    Hash hash{};
    crypto_generichash_final(&state_, hash.data(), hash.size());
    return hash;
  }

 private:
  void put(std::uint64_t number) {
    std::array<unsigned char, 8> bytes{};
    for (auto& byte : bytes) {
      byte = static_cast<unsigned char>(number & 0xFFU);
      number >>= 8U;
    }
    crypto_generichash_update(&state_, bytes.data(), bytes.size());
  }
  crypto_generichash_state state_{};
};

}  // namespace

void ready_crypto() {
  if (sodium_init() < 0) throw std::runtime_error("the system gives no random numbers");
}

Hash hash_of(const BookName& book) {
  Hasher hasher("pour book, version 1");
  hasher.add(book.uuid);
  hasher.add(book.tag);
  hasher.add(book.created);
  return hasher.done();
}

Hash hash_of(const Row& row) {
  Hasher hasher("pour book event, version 1");
  hasher.add(row.previous);
  hasher.add(row.seq);
  hasher.add(row.pour);
  hasher.add(row.id);
  hasher.add(row.line);
  hasher.add(row.entered);
  hasher.add(row.steady);
  hasher.add(row.boot);
  hasher.add(row.kept);
  return hasher.done();
}

Hash hash_of_text(std::string_view text) {
  Hasher hasher("pour book text, version 1");
  hasher.add(text);
  return hasher.done();
}

std::string to_hex(const Hash& hash) {
  std::string text;
  for (const auto byte : hash) text += fmt::format("{:02x}", byte);
  return text;
}

}  // namespace rb::store
