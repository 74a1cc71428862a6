#include "store/file/identity.h"

#include <fmt/format.h>
#include <sodium.h>

#include <array>
#include <charconv>
#include <string_view>

#include "store/file/chain.h"

namespace rb::store {

std::string random_tag() {
  constexpr std::string_view kLetters = "23456789BCDFGHJKMNPQRSTVWXYZ";
  ready_crypto();
  std::string tag;
  for (int i = 0; i < 5; ++i) tag += kLetters[randombytes_uniform(kLetters.size())];
  return tag;
}

std::string random_uuid() {
  ready_crypto();
  std::array<unsigned char, 16> bytes{};
  randombytes_buf(bytes.data(), bytes.size());
  bytes[6] = static_cast<unsigned char>((bytes[6] & 0x0FU) | 0x40U);
  bytes[8] = static_cast<unsigned char>((bytes[8] & 0x3FU) | 0x80U);
  std::string text;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (i == 4 || i == 6 || i == 8 || i == 10) text += '-';
    text += fmt::format("{:02x}", bytes[i]);
  }
  return text;
}

EventId event_id(const std::string& tag, std::int64_t seq) {
  return EventId{fmt::format("{}-{}", tag, seq)};
}

std::int64_t seq_in(const EventId& id) {
  const auto dash = id.text.find('-');
  if (dash == std::string::npos) return 0;
  const char* const end = id.text.data() + id.text.size();
  std::int64_t seq = 0;
  const auto [stopped, code] = std::from_chars(id.text.data() + dash + 1, end, seq);
  return code == std::errc{} && stopped == end && seq > 0 ? seq : 0;
}

}  // namespace rb::store
