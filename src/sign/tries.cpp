#include "sign/tries.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>

namespace rb::sign {

namespace {

constexpr std::string_view kHead = "risebook pin tries 1";

struct Line {
  std::string key;
  Tries tries;
};

// "<wrong> <moment> <key>"
std::optional<Line> line_of(std::string_view text) {
  Line line;
  const auto first = text.find(' ');
  const auto second = first == std::string_view::npos ? first : text.find(' ', first + 1);
  if (second == std::string_view::npos) return std::nullopt;
  const auto number = text.substr(0, first);
  const auto read = std::from_chars(number.data(), number.data() + number.size(), line.tries.wrong);
  const auto at = parse_moment(text.substr(first + 1, second - first - 1));
  line.key = text.substr(second + 1);
  if (read.ec != std::errc{} || read.ptr != number.data() + number.size() || line.tries.wrong < 1 ||
      !at || line.key.empty() || !is_hex(line.key)) {
    return std::nullopt;
  }
  line.tries.last = *at;
  return line;
}

}  // namespace

Seconds wait_left(const Tries& tries, Moment now) {
  if (tries.wrong < kFreeTries) return Seconds{0};
  const int doubled = std::min(tries.wrong - kFreeTries, 16);
  const Seconds wait = std::min(kLongestWait, kFirstWait * static_cast<double>(1U << doubled));
  return wait - std::max(Seconds{0}, between(tries.last, now));
}

TriesList TriesList::read(std::string_view text, Moment now) {
  TriesList list;
  const auto next = [&] {
    const auto end = text.find('\n');
    const auto line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    return line;
  };
  if (text.empty()) return list;
  bool whole = next() == kHead;
  while (whole && !text.empty()) {
    const auto line = line_of(next());
    whole = line.has_value();
    if (line) list.keys_[line->key] = line->tries;
  }
  if (!whole) list.others_ = {kFreeTries, now};
  return list;
}

std::string TriesList::text() const {
  std::string text = fmt::format("{}\n", kHead);
  for (const auto& [key, tries] : keys_) {
    text += fmt::format("{} {} {}\n", tries.wrong, to_text(tries.last), key);
  }
  return text;
}

Tries TriesList::of(const Hex& key) const {
  const auto known = keys_.find(key.digits);
  return known == keys_.end() ? others_ : known->second;
}

void TriesList::add(const Hex& key, Moment now) {
  Tries tries = of(key);
  ++tries.wrong;
  tries.last = now;
  keys_[key.digits] = tries;
}

void TriesList::clear(const Hex& key) {
  keys_.erase(key.digits);
}

}  // namespace rb::sign
