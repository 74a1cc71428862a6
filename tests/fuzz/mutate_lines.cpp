#include "mutate_lines.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <random>
#include <utility>

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t room);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t room, unsigned seed);

namespace rb::fuzz {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines(1);
  for (const char c : text) {
    if (c == '\n') {
      lines.emplace_back();
    } else {
      lines.back() += c;
    }
  }
  return lines;
}

namespace {

/// A number somewhere in the line becomes another.
void change_number(std::string& line, std::mt19937& random) {
  static const char* const kNumbers[] = {"0",   "1",    "2",    "-1",   "0.5", "3.6",  "1e-9",
                                         "1e9", "1e99", "1000", "0.05", "12",  "6000", "99999"};
  std::vector<std::pair<std::size_t, std::size_t>> found;
  for (std::size_t i = 0; i < line.size();) {
    const auto digits = line.find_first_not_of("0123456789.-+e", i) - i;
    if (line[i] >= '0' && line[i] <= '9') {
      found.emplace_back(i, std::min(digits, line.size() - i));
      i += found.back().second;
    } else {
      ++i;
    }
  }
  if (found.empty()) return;
  const auto& [at, length] = found[random() % found.size()];
  line.replace(at, length, kNumbers[random() % std::size(kNumbers)]);
}

/// Two digits of a time of day move: what happened happened at another time.
void change_time(std::string& line, std::mt19937& random) {
  const auto at = line.find(":00.");
  const auto hour = line.find('T');
  if (at == std::string::npos || hour == std::string::npos || hour + 6 > line.size()) return;
  line[hour + 4] = static_cast<char>('0' + random() % 6);
  line[hour + 5] = static_cast<char>('0' + random() % 10);
}

void change_lines(std::vector<std::string>& lines, std::mt19937& random) {
  const auto pick = [&] { return random() % lines.size(); };
  const auto place = [&](std::size_t at) {
    return lines.begin() + static_cast<std::ptrdiff_t>(at);
  };
  const auto from = pick();
  switch (random() % 6) {
    case 0:
      lines.insert(place(pick()), std::string(lines[from]));
      break;
    case 1:
      lines.erase(place(from));
      break;
    case 2:
      std::swap(lines[from], lines[pick()]);
      break;
    case 3:
      change_time(lines[from], random);
      break;
    default:
      change_number(lines[from], random);
      break;
  }
}

}  // namespace

}  // namespace rb::fuzz

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t room, unsigned seed) {
  std::mt19937 random(seed);
  if (size == 0 || random() % 2 == 0) return LLVMFuzzerMutate(data, size, room);
  auto lines = rb::fuzz::lines_of({reinterpret_cast<const char*>(data), size});
  rb::fuzz::change_lines(lines, random);
  std::string text;
  for (const auto& line : lines) text += (text.empty() ? "" : "\n") + line;
  if (text.empty() || text.size() > room) return LLVMFuzzerMutate(data, size, room);
  std::memcpy(data, text.data(), text.size());
  return text.size();
}
