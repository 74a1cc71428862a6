// The hash chain of a book: BLAKE2b-256 over length-prefixed fields, each event's hash taken over
// the one before, the first over the book's own name. It shows what was changed by someone who does
// not make the whole chain anew; the head hash printed on a record shows that too.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace rb::store {

using Hash = std::array<unsigned char, 32>;

/// A book's own row.
struct BookName {
  std::string uuid;
  std::string tag;
  std::int64_t created = 0;  ///< ms since 1970 UTC
};

/// An event's row, hash aside.
struct Row {
  std::int64_t seq = 0;
  std::string pour, id, line;
  std::int64_t entered = 0;  ///< ms since 1970 UTC
  double steady = 0;         ///< s
  std::string boot;
  std::int64_t kept = 0;  ///< ms since 1970 UTC
  Hash previous{};
};

Hash hash_of(const BookName& book);
Hash hash_of(const Row& row);
/// Of a text that stands for nothing else: the check of a note, what a signature is made over.
Hash hash_of_text(std::string_view text);
std::string to_hex(const Hash& hash);

/// Makes the crypto library ready; safe to call again.
void ready_crypto();

}  // namespace rb::store
