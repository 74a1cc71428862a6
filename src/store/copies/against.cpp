#include "store/copies/against.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <system_error>

#include "base/short_code.h"
#include "store/book/connection.h"
#include "store/book/head_note.h"
#include "store/book/row_reader.h"
#include "store/copies/mirror.h"
#include "store/file/identity.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;
using Answer = Result<AgainstAnswer>;

constexpr std::size_t kRowsAtOnce = 1000;
constexpr std::uint64_t kMostText = 64U << 20U;

/// The book as far as it is asked about here.
struct Numbers {
  BookName name;
  std::int64_t last = 0;
  std::map<std::string, std::int64_t> by_hash, by_code;
  std::map<std::int64_t, std::string> hashes;  ///< at each number, from 0, of what holds

  [[nodiscard]] bool has(std::int64_t seq, const std::string& hash) const {
    const auto at = hashes.find(seq);
    return at != hashes.end() && at->second == hash;
  }
};

Result<Numbers> numbers_of(const fs::path& book) {
  auto reader = RowReader::open(book);
  if (!reader) return Failed{reader.error()};
  Numbers numbers{.name = reader->name(), .last = 0, .by_hash = {}, .by_code = {}, .hashes = {}};
  const auto add = [&](std::int64_t seq, const Hash& hash) {
    const auto hex = to_hex(hash);
    numbers.last = seq;
    numbers.by_hash[hex] = seq;
    numbers.by_code[short_code(hex)] = seq;
    numbers.hashes[seq] = hex;
  };
  add(0, hash_of(numbers.name));
  for (bool more = true; more;) {
    const auto rows = reader->after(numbers.last, kRowsAtOnce);
    if (!rows) return Failed{rows.error()};
    // Only what holds counts as had.
    for (const auto& row : *rows) {
      if (row.holds()) {
        add(row.row.seq, row.hash);
      } else {
        numbers.last = row.row.seq;
      }
    }
    more = !rows->empty();
  }
  return numbers;
}

AgainstAnswer found(const Numbers& book, const std::string& what, std::int64_t seq) {
  const auto since = book.last - seq;
  return {true,
          fmt::format("{}: the book's event {} of {} had it; {} added since", what, seq, book.last,
                      since == 0   ? std::string("none was")
                      : since == 1 ? std::string("1 was")
                                   : fmt::format("{} were", since))};
}

AgainstAnswer never(const std::string& what) {
  return {false, fmt::format("{}: this book never had it", what)};
}

bool is_hash(const std::string& text) {
  return read_hash(text).has_value();
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'F' ? static_cast<char>(c + 32) : c; });
  return text;
}

/// Every run of exactly 64 hex digits.
std::set<std::string> hashes_in(const std::string& text) {
  std::set<std::string> hashes;
  std::size_t begin = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const char c = i < text.size() ? text[i] : ' ';
    const bool hex = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
    if (hex) continue;
    if (i - begin == 64) hashes.insert(lower(text.substr(begin, 64)));
    begin = i + 1;
  }
  return hashes;
}

std::string span(const Numbers& book, std::int64_t first, std::int64_t last) {
  const auto from = event_id(book.name.tag, first).text;
  return first == last
             ? fmt::format("event {} is", from)
             : fmt::format("events {} to {} are", from, event_id(book.name.tag, last).text);
}

/// A mirror tells of every event, not of the last alone.
Answer against_mirror(const Numbers& book, const std::string& what, const fs::path& file) {
  const auto content = read_mirror(plain_disk(), file);
  if (!content) return Failed{content.error()};
  if (content->name && content->name->uuid != book.name.uuid) {
    return AgainstAnswer{false, fmt::format("{}: is the mirror of another book", what)};
  }
  std::int64_t had = 0;
  for (const auto& [row, hash] : content->rows) {
    if (row.seq > book.last) {
      const auto end = content->rows.back().row.seq;
      return AgainstAnswer{false, fmt::format("{}: {} in the mirror and not here", what,
                                              span(book, book.last + 1, end))};
    }
    if (!book.has(row.seq, to_hex(hash))) {
      return AgainstAnswer{
          false, fmt::format("{}: this book never had the event {} of the mirror", what, row.id)};
    }
    had = row.seq;
  }
  for (const Signed& head : content->heads) {
    if (head.seq > book.last || !book.has(head.seq, to_hex(head.hash))) {
      return AgainstAnswer{
          false, fmt::format("{}: this book never stood at event {} as device {} signed it there",
                             what, head.seq, short_name(head.key))};
    }
  }
  auto answer = found(book, what, had);
  const auto gaps = content->missing();
  if (!content->damaged.empty() || !gaps.empty()) {
    answer.says += fmt::format("; {} of the mirror's lines are damaged", content->damaged.size());
    for (const auto& [first, last] : gaps) {
      answer.says += fmt::format("; {} not in the mirror", span(book, first, last));
    }
  }
  return answer;
}

Answer against_book(const Numbers& book, const std::string& what, const fs::path& file) {
  const auto other = numbers_of(file);
  if (!other) return Failed{other.error()};
  if (other->name.uuid != book.name.uuid) {
    return AgainstAnswer{false, fmt::format("{}: is another book", what)};
  }
  for (const auto& [seq, hash] : other->hashes) {
    if (seq == 0) continue;
    if (seq > book.last) {
      return AgainstAnswer{
          false, fmt::format("{}: {} in it and not here", what, span(book, seq, other->last))};
    }
    if (!book.has(seq, hash)) {
      return AgainstAnswer{false, fmt::format("{}: this book never had its event {}", what,
                                              event_id(book.name.tag, seq).text)};
    }
  }
  return found(book, what, other->last);
}

Answer against_file(const Numbers& book, const std::string& what, const fs::path& file) {
  if (looks_like_mirror(plain_disk(), file)) return against_mirror(book, what, file);
  if (probe(settled(file))) return against_book(book, what, file);
  if (const auto note = read_note(plain_disk(), file); note.state == NoteRead::State::whole) {
    const auto there = book.by_hash.find(to_hex(note.note.hash));
    return there == book.by_hash.end() ? never(what) : found(book, what, there->second);
  }
  const auto opened = plain_disk().open_to_read(file);
  const auto text = opened ? read_all(**opened, kMostText) : tl::unexpected(opened.error());
  if (!text) {
    return fail(Error::Kind::input, what, "cannot be read: " + text.error().message(),
                "Give a hash, a short code, a record (JSON), a note, a mirror or a copy");
  }
  const auto hashes = hashes_in(*text);
  if (hashes.empty()) {
    return fail(Error::Kind::input, what, "no hash of 64 digits is in it",
                "Give a hash, a short code, a record (JSON), a note, a mirror or a copy");
  }
  std::optional<std::int64_t> best;
  for (const auto& hash : hashes) {
    const auto there = book.by_hash.find(hash);
    if (there != book.by_hash.end()) best = std::max(best.value_or(0), there->second);
  }
  return best ? found(book, what, *best) : never(what);
}

Answer answer_to(const Numbers& book, const std::string& given) {
  const auto look = [&](const auto& in, const std::string& key) -> Answer {
    const auto there = in.find(key);
    return there == in.end() ? never(given) : found(book, given, there->second);
  };
  if (is_hash(given)) return look(book.by_hash, lower(given));
  std::error_code error;
  if (fs::exists(given, error)) return against_file(book, given, given);
  if (const auto code = read_short_code(given); !code.empty()) return look(book.by_code, code);
  return fail(Error::Kind::input, given, "is neither a hash, nor a short code, nor a file",
              "A hash has 64 digits 0-9 a-f, a code ten letters and digits");
}

}  // namespace

Result<std::vector<AgainstAnswer>> hold_against(const fs::path& book,
                                                const std::vector<std::string>& given) {
  const auto numbers = numbers_of(book);
  if (!numbers) return Failed{numbers.error()};
  std::vector<AgainstAnswer> answers;
  for (const auto& one : given) {
    auto answer = answer_to(*numbers, one);
    if (!answer) return Failed{answer.error()};
    answers.push_back(std::move(*answer));
  }
  return answers;
}

std::vector<fs::path> mirrors_in(const fs::path& folder, const fs::path& book,
                                 const std::string& tag) {
  std::vector<fs::path> mirrors;
  const auto begin = fmt::format("{}-{}", book.stem().string(), tag);
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const auto name = entry.path().filename().string();
    if (name.starts_with(begin) && entry.path().extension() == ".riseline") {
      mirrors.push_back(entry.path());
    }
  }
  std::sort(mirrors.begin(), mirrors.end());
  return mirrors;
}

}  // namespace rb::store
