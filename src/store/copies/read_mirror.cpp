// Reading a mirror whole: what of it holds, and what does not.
#include <fmt/format.h>

#include <map>

#include "store/copies/mirror.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostLinesTold = 50;
constexpr std::uint64_t kMostBytes = 4ULL << 30U;

Failed unreadable(const fs::path& path, const std::string& why) {
  return fail(Error::Kind::book, path.string(), "the mirror cannot be read: " + why,
              "Check the name and the stick");
}

class Reading {
 public:
  void take(std::size_t number, std::string_view line) {
    if (line.empty()) return;
    if (auto row = read_row(line)) {
      take(number, std::move(*row));
    } else if (const auto head = read_head(line)) {
      heads_.try_emplace({head->seq, head->key}, Line{*head, number});
    } else if (const auto name = read_name(line)) {
      if (content_.name && content_.name->uuid != name->uuid) {
        tell(fmt::format("Line {} is of another book", number));
      } else {
        content_.name = name;
      }
    } else {
      tell(fmt::format("Line {} is damaged", number));
    }
  }

  MirrorContent done() {
    const KeptRow* before = nullptr;
    for (auto& [seq, row] : rows_) {
      const bool follows =
          before ? before->row.seq + 1 != seq || before->hash == row.row.previous
                 : seq != 1 || !content_.name || hash_of(*content_.name) == row.row.previous;
      if (!follows) tell(fmt::format("Event {} does not follow the one before it", row.row.id));
      before = &row;
    }
    for (const auto& [at, line] : heads_) take(line);
    for (auto& [seq, row] : rows_) content_.rows.push_back(std::move(row));
    return std::move(content_);
  }

 private:
  struct Line {
    Signed head;
    std::size_t number = 0;
  };
  /// Judged once name and rows are known. One whose name is damaged cannot be judged: it stays.
  void take(const Line& line) {
    const auto row = rows_.find(line.head.seq);
    if (content_.name && !holds(line.head, content_.name->uuid)) {
      tell(fmt::format("Line {}: the signature of the head at event {} does not hold", line.number,
                       line.head.seq));
    } else if (row != rows_.end() && row->second.hash != line.head.hash) {
      tell(fmt::format("Line {}: event {} is not the one that device {} signed for", line.number,
                       row->second.row.id, short_name(line.head.key)));
    } else {
      content_.heads.push_back(line.head);
    }
  }
  void take(std::size_t number, KeptRow row) {
    const auto seq = row.row.seq;
    const auto [there, fresh] = rows_.try_emplace(seq, std::move(row));
    if (!fresh && there->second.hash != row.hash) {
      tell(fmt::format("Line {} is another event {}", number, there->second.row.id));
    }
  }
  void tell(std::string what) {
    if (content_.damaged.size() < kMostLinesTold) content_.damaged.push_back(std::move(what));
  }

  MirrorContent content_;
  std::map<std::int64_t, KeptRow> rows_;
  std::map<std::pair<std::int64_t, PublicKey>, Line> heads_;
};

}  // namespace

std::vector<std::pair<std::int64_t, std::int64_t>> MirrorContent::missing() const {
  std::vector<std::pair<std::int64_t, std::int64_t>> gaps;
  std::int64_t next = 1;
  for (const auto& row : rows) {
    if (row.row.seq > next) gaps.emplace_back(next, row.row.seq - 1);
    next = row.row.seq + 1;
  }
  return gaps;
}

Result<MirrorContent> read_mirror(PlainDisk& disk, const fs::path& path) {
  const auto file = disk.open_to_read(path);
  if (!file) return unreadable(path, file.error().message());
  const auto text = read_all(**file, kMostBytes);
  if (!text) return unreadable(path, text.error().message());
  Reading reading;
  std::string_view rest = *text;
  for (std::size_t number = 1; !rest.empty(); ++number) {
    const auto end = rest.find('\n');
    reading.take(number, rest.substr(0, end));
    rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
  }
  return reading.done();
}

bool looks_like_mirror(PlainDisk& disk, const fs::path& path) {
  const auto file = disk.open_to_read(path);
  if (!file) return false;
  const auto text = (*file)->read(0, 8192);
  if (!text) return false;
  std::string_view rest = *text;
  while (!rest.empty()) {
    const auto end = rest.find('\n');
    const auto line = rest.substr(0, end);
    if (read_name(line) || read_row(line) || read_head(line)) return true;
    rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
  }
  return false;
}

}  // namespace rb::store
