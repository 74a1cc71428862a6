#include "store/salvage/row_scan.h"

#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <optional>
#include <string_view>
#include <tuple>

namespace rb::store {

namespace {

constexpr std::size_t kFieldsOfARow = 10;
constexpr std::size_t kMostPayload = std::size_t{64} << 20U;
constexpr unsigned char kHashType = 12 + 2 * 32;  // a blob of 32 bytes (section 2.1)

struct Varint {
  std::uint64_t value = 0;
  std::size_t bytes = 0;  ///< 0: it does not end
};

Varint varint(Bytes bytes, std::size_t at) {
  Varint read;
  for (std::size_t i = 0; i < 9 && at + i < bytes.size(); ++i) {
    const auto byte = bytes[at + i];
    if (i == 8) return {read.value << 8U | byte, 9};
    read.value = read.value << 7U | (byte & 0x7fU);
    if ((byte & 0x80U) == 0) return {read.value, i + 1};
  }
  return {};
}

std::size_t varint_size(std::uint64_t value) {
  std::size_t size = 1;
  while (size < 9 && (value >>= 7U) != 0) ++size;
  return size;
}

bool is_text(std::uint64_t type) {
  return type >= 13 && type % 2 == 1;
}
bool is_integer(std::uint64_t type) {
  return (type >= 1 && type <= 6) || type == 8 || type == 9;
}

std::size_t size_of(std::uint64_t type) {
  constexpr std::array<std::size_t, 12> kSizes{0, 1, 2, 3, 4, 6, 8, 8, 0, 0, 0, 0};
  return type < 12 ? kSizes[type] : static_cast<std::size_t>((type - 12) / 2);
}

/// A record's content, taken column by column; the caller made sure that it is all there.
class Content {
 public:
  explicit Content(Bytes bytes) : bytes_(bytes) {}

  std::int64_t integer(std::uint64_t type) {
    if (type == 8 || type == 9) return static_cast<std::int64_t>(type - 8);
    const auto part = take(size_of(type));
    std::uint64_t number = !part.empty() && (part[0] & 0x80U) != 0 ? ~std::uint64_t{0} : 0;
    for (const auto byte : part) number = number << 8U | byte;
    return static_cast<std::int64_t>(number);
  }
  double real(std::uint64_t type) {
    const auto number = integer(type == 7 ? 6 : type);  // a whole one is kept as an integer
    return type == 7 ? std::bit_cast<double>(number) : static_cast<double>(number);
  }
  std::string text(std::uint64_t type) {
    const auto part = take(size_of(type));
    return {part.begin(), part.end()};
  }
  Hash hash() {
    Hash hash{};
    const auto part = take(hash.size());
    std::copy(part.begin(), part.end(), hash.begin());
    return hash;
  }

 private:
  Bytes take(std::size_t count) {
    const auto part = bytes_.subspan(at_, count);
    at_ += count;
    return part;
  }
  Bytes bytes_;
  std::size_t at_ = 0;
};

using Types = std::array<std::uint64_t, kFieldsOfARow>;

/// A row's header: seq, pour, id, line, entered, steady, boot, kept, prev_hash, hash.
struct RowHeader {
  std::size_t begin = 0, size = 0;
  Types types{};
  std::size_t payload = 0;
};

std::optional<RowHeader> header_at(Bytes page, std::size_t begin, std::size_t end) {
  RowHeader header{.begin = begin, .size = end - begin, .types = {}, .payload = end - begin};
  std::size_t at = begin + 1;
  for (auto& type : header.types) {
    const auto read = varint(page, at);
    if (read.bytes == 0 || read.value / 2 > kMostPayload) return std::nullopt;
    type = read.value;
    at += read.bytes;
    header.payload += size_of(type);
  }
  const auto& t = header.types;
  const bool fits = at == end && t[0] == 0 && is_text(t[1]) && is_text(t[2]) && is_text(t[3]) &&
                    is_integer(t[4]) && (is_integer(t[5]) || t[5] == 7) && is_text(t[6]) &&
                    is_integer(t[7]) && t[8] == kHashType && t[9] == kHashType &&
                    header.payload <= kMostPayload;
  return fits ? std::optional(header) : std::nullopt;
}

/// The number behind the last hyphen of an id; 0 for none.
std::int64_t number_of(const std::string& id) {
  const auto hyphen = id.rfind('-');
  if (hyphen == std::string::npos) return 0;
  std::int64_t number = 0;
  const auto* const end = id.data() + id.size();
  const auto read = std::from_chars(id.data() + hyphen + 1, end, number);
  return read.ec == std::errc{} && read.ptr == end && number > 0 ? number : 0;
}

/// The number a cell gives its row, which stands before the record's header; 0 when it cannot be
/// read.
std::int64_t number_before(Bytes page, const RowHeader& header) {
  const auto size = varint_size(header.payload);
  for (std::size_t length = 1; length <= 9 && length + size <= header.begin; ++length) {
    const auto number = varint(page, header.begin - length);
    const auto payload = varint(page, header.begin - length - size);
    if (number.bytes == length && payload.bytes == size && payload.value == header.payload) {
      return static_cast<std::int64_t>(number.value);
    }
  }
  return 0;
}

class Scanner {
 public:
  explicit Scanner(const PageImages& pages) : pages_(pages) {
    for (const auto& image : pages.all()) effort_ += 16 * image.bytes.size();
  }

  Scan run() {
    for (const auto& image : pages_.all()) {
      rows_in(image);
      small_in(image);
    }
    return std::move(scan_);
  }

 private:
  void rows_in(const PageImage& image) {
    const auto page = image.bytes;
    for (std::size_t at = 9; at + 2 <= page.size(); ++at) {
      if (page[at] != kHashType || page[at + 1] != kHashType) continue;
      const std::size_t end = at + 2;
      for (std::size_t size = kFieldsOfARow + 1; size <= 24 && size <= end; ++size) {
        if (page[end - size] != size) continue;
        const auto header = header_at(page, end - size, end);
        if (!header) continue;
        row_at(image, *header);
        break;
      }
    }
  }

  void row_at(const PageImage& image, const RowHeader& header) {
    const auto page = image.bytes;
    const auto usable = pages_.usable();
    // How much of it lies here (section 1.6).
    std::size_t local = header.payload;
    if (header.payload > usable - 35) {
      const auto least = (usable - 12) * 32 / 255 - 23;
      local = least + (header.payload - least) % (usable - 4);
      if (local > usable - 35) local = least;
    }
    const bool more = local < header.payload;
    const auto length = local + (more ? 4 : 0);
    if (header.begin + length > page.size() || local < header.size) return;
    const auto body = page.subspan(header.begin + header.size, local - header.size);
    const auto seq = number_before(page, header);
    if (!more) {
      keep(row_from(body, header, seq), image.current);
      return;
    }
    follow(image, header, body, big_endian_32(page, header.begin + local), seq);
  }

  /// Goes along the chain of overflow pages: through the newest images, and, when the row does not
  /// hold so, through each other one there is of one page.
  void follow(const PageImage& image, const RowHeader& header, Bytes body, std::uint32_t first,
              std::int64_t seq) {
    std::optional<FoundRow> unsound;
    std::vector<std::size_t> ways;  // how many images each step had to choose from
    for (std::size_t step = 0, other = 0; step == 0 || step <= ways.size();) {
      std::vector<unsigned char> whole(body.begin(), body.end());
      const bool complete = gather(whole, header.payload - header.size, first, step == 0 ? 0 : step,
                                   other, step == 0 ? &ways : nullptr);
      if (complete) {
        auto found = row_from(whole, header, seq);
        if (found.holds) {
          ++scan_.split_whole;
          keep(std::move(found), image.current);
          return;
        }
        if (!unsound) unsound = std::move(found);
      }
      ++other;
      if (step == 0 || other >= ways[step - 1]) {
        ++step;
        other = 1;
        while (step <= ways.size() && ways[step - 1] < 2) ++step;
      }
      if (effort_ == 0) break;
    }
    ++scan_.split_lost;
    if (unsound) keep(std::move(*unsound), image.current);
  }

  /// Appends the overflow pages to `whole` until it is `size` long; at the step `odd` (from 1) the
  /// image `other` is taken.
  bool gather(std::vector<unsigned char>& whole, std::size_t size, std::uint32_t next,
              std::size_t odd, std::size_t other, std::vector<std::size_t>* ways) {
    const auto room = pages_.usable() - 4;
    for (std::size_t step = 1; whole.size() < size; ++step) {
      const auto images = pages_.of(next);
      if (ways) ways->push_back(images.size());
      const auto choice = step == odd ? other : 0;
      const auto part = std::min(room, size - whole.size());
      if (choice >= images.size()) return false;
      if (effort_ < part + 512) {
        effort_ = 0;
        return false;
      }
      const auto bytes = images[choice]->bytes;
      if (bytes.size() < 4 + part) return false;
      effort_ -= part + 512;
      whole.insert(whole.end(), bytes.begin() + 4,
                   bytes.begin() + 4 + static_cast<std::ptrdiff_t>(part));
      next = big_endian_32(bytes, 0);
    }
    return true;
  }

  static FoundRow row_from(Bytes body, const RowHeader& header, std::int64_t seq) {
    Content content(body);
    const auto& t = header.types;
    FoundRow found;
    auto& row = found.row;
    row.pour = content.text(t[1]);
    row.id = content.text(t[2]);
    row.line = content.text(t[3]);
    row.entered = content.integer(t[4]);
    row.steady = content.real(t[5]);
    row.boot = content.text(t[6]);
    row.kept = content.integer(t[7]);
    row.previous = content.hash();
    found.hash = content.hash();
    row.seq = number_of(row.id);
    found.holds = row.seq > 0 && !row.pour.empty() && hash_of(row) == found.hash;
    if (!found.holds && seq > 0) row.seq = seq;
    return found;
  }

  void keep(FoundRow found, bool current) {
    found.current = current;
    const auto [at, fresh] =
        known_.try_emplace(std::tuple{found.row.seq, found.holds, found.hash}, scan_.rows.size());
    if (fresh) {
      scan_.rows.push_back(std::move(found));
    } else if (current) {
      scan_.rows[at->second].current = true;
    }
  }

  /// The head and the book's own row: cells numbered 1 of a shape of their own.
  void small_in(const PageImage& image) {
    const auto page = image.bytes;
    for (std::size_t at = 2; at + 5 <= page.size(); ++at) {
      if (page[at - 1] != 1 || page[at + 1] != 0) continue;
      if (page[at] == 4 && page[at + 3] == kHashType && is_integer(page[at + 2])) {
        const auto size = size_of(page[at + 2]);
        if (page[at - 2] != 4 + size + 32 || at + 4 + size + 32 > page.size()) continue;
        Content content(page.subspan(at + 4));
        const auto seq = content.integer(page[at + 2]);
        if (seq >= 0) scan_.heads.push_back({{seq, content.hash()}, image.current});
      } else if (page[at] == 5 && page[at + 2] == 13 + 2 * 36 && page[at + 3] == 13 + 2 * 5 &&
                 is_integer(page[at + 4])) {
        if (at + 5 + 36 + 5 + size_of(page[at + 4]) > page.size()) continue;
        Content content(page.subspan(at + 5));
        BookName name;
        name.uuid = content.text(page[at + 2]);
        name.tag = content.text(page[at + 3]);
        name.created = content.integer(page[at + 4]);
        scan_.names.push_back(std::move(name));
      }
    }
  }

  const PageImages& pages_;
  Scan scan_;
  std::map<std::tuple<std::int64_t, bool, Hash>, std::size_t> known_;
  std::size_t effort_ = std::size_t{64} << 20U;  ///< bytes still to be gathered: no file takes ages
};

}  // namespace

Scan scan_rows(const PageImages& pages) {
  return Scanner(pages).run();
}

std::vector<FoundPlace> scan_places(const PageImages& pages, const std::set<std::int64_t>& asked) {
  std::vector<FoundPlace> places;
  for (const auto& image : pages.all()) {
    const auto page = image.bytes;
    for (std::size_t at = 1; at + 4 <= page.size(); ++at) {
      // The pour, the number, and the number again, by which the index leads to the row.
      const auto text = page[at + 1], number = page[at + 2], row = page[at + 3];
      if (page[at] != 4 || !is_text(text) || text >= 0x80 || !is_integer(number) ||
          !is_integer(row)) {
        continue;
      }
      const auto length = size_of(text) + size_of(number) + size_of(row);
      if (page[at - 1] != 4 + length || at + 4 + length > page.size()) continue;
      Content content(page.subspan(at + 4));
      auto pour = content.text(text);
      const auto seq = content.integer(number);
      if (content.integer(row) == seq && !pour.empty() && asked.contains(seq)) {
        places.push_back({seq, std::move(pour)});
      }
    }
  }
  return places;
}

}  // namespace rb::store
