#include "store/copies/mirror.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "store/file/identity.h"

namespace rb::store {

namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t kBeginning = 4096;                      // holds both header lines
constexpr std::uint64_t kFirstLook = std::uint64_t{64} * 1024;  // from the end
constexpr int kMostFiles = 99;

tl::unexpected<MirrorTrouble> mirror_trouble(const fs::path& path, const std::error_code& code) {
  using Kind = MirrorTrouble::Kind;
  struct Row {
    std::errc code;
    Kind kind;
    const char* what;
    const char* remedy;
  };
  static constexpr std::array kRows{
      Row{std::errc::no_such_file_or_directory, Kind::folder_gone, "the mirror's folder is gone",
          "Put the stick back"},
      Row{std::errc::not_a_directory, Kind::folder_gone, "the mirror's folder is gone",
          "Put the stick back"},
      Row{std::errc::no_such_device, Kind::folder_gone, "the mirror's disk is gone",
          "Put the stick back"},
      Row{std::errc::no_space_on_device, Kind::full, "the mirror's disk is full",
          "Free some space on it"},
      Row{std::errc::permission_denied, Kind::forbidden, "the mirror may not be written to",
          "Choose another folder"},
      Row{std::errc::operation_not_permitted, Kind::forbidden, "the mirror may not be written to",
          "Choose another folder"},
      Row{std::errc::read_only_file_system, Kind::forbidden, "the mirror may not be written to",
          "Choose another folder"},
  };
  const auto* const row =
      std::find_if(kRows.begin(), kRows.end(), [&](const Row& r) { return code == r.code; });
  if (row != kRows.end()) {
    return tl::unexpected(
        MirrorTrouble{row->kind, {Error::Kind::book, path.string(), row->what, row->remedy}});
  }
  return tl::unexpected(MirrorTrouble{
      Kind::disk,
      {Error::Kind::book, path.string(), "the mirror's disk does not answer: " + code.message(),
       "Look at the stick, or choose another folder"}});
}

/// The end of a file as far as the last row that holds.
struct Tail {
  std::optional<KeptRow> row;
  bool torn = false;         ///< its last line is not ended
  bool signed_here = false;  ///< a signed head of it stands behind it
};

Done<Tail> tail_of(PlainFile& file, std::uint64_t size) {
  Tail tail;
  std::int64_t signed_at = 0;
  for (std::uint64_t look = kFirstLook; size > 0; look *= 4) {
    signed_at = 0;
    const std::uint64_t from = look < size ? size - look : 0;
    const auto bytes = file.read(from, static_cast<std::size_t>(size - from));
    if (!bytes) return tl::unexpected(bytes.error());
    std::string_view text = *bytes;
    tail.torn = !text.empty() && text.back() != '\n';
    while (!text.empty()) {
      if (text.back() == '\n') text.remove_suffix(1);
      const auto before = text.rfind('\n');
      if (before == std::string_view::npos && from > 0) break;  // the line begins further up
      const auto line = before == std::string_view::npos ? text : text.substr(before + 1);
      if ((tail.row = read_row(line))) {
        tail.signed_here = signed_at == tail.row->row.seq;
        return tail;
      }
      if (const auto head = read_head(line)) signed_at = head->seq;
      text = before == std::string_view::npos ? std::string_view{} : text.substr(0, before + 1);
    }
    if (from == 0) break;
  }
  return tail;
}

/// The names that the first lines of a file tell, and of which version they are.
struct Named {
  BookName name;
  int version = 0;
};
std::vector<Named> names_in(std::string_view text) {
  std::vector<Named> names;
  while (!text.empty()) {
    const auto end = text.find('\n');
    const auto line = text.substr(0, end);
    if (auto name = read_name(line)) {
      names.push_back({std::move(*name), version_of(line).value_or(kMirrorVersion)});
    }
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
  }
  return names;
}

/// What a file by the mirror's name is to this book.
struct Fit {
  std::string against;  ///< why it is passed over; empty: it is the book's mirror
  std::int64_t last = 0;
  bool torn = false, headed = false, last_signed = false;
};

Mirrored<Fit> fit(PlainFile& file, const fs::path& path, std::uint64_t size, const BookName& book,
                  const Mirror::HashAt& at) {
  const auto beginning = file.read(0, static_cast<std::size_t>(std::min(size, kBeginning)));
  if (!beginning) return mirror_trouble(path, beginning.error());
  const auto names = names_in(*beginning);
  for (const auto& [name, version] : names) {
    if (name.uuid != book.uuid) return Fit{.against = "is the mirror of another book"};
  }
  const bool earlier = std::any_of(names.begin(), names.end(), [](const Named& named) {
    return named.version < kMirrorVersion;
  });
  if (earlier) return Fit{.against = "is of an earlier version; another was begun"};
  const auto tail = tail_of(file, size);
  if (!tail) return mirror_trouble(path, tail.error());
  Fit found{.against = {}, .last = 0, .torn = tail->torn, .headed = !names.empty()};
  if (!tail->row) {
    // Nothing of it holds: begun, and cut short, or no mirror at all.
    if (names.empty() && size > 2 * line_of(book).size()) found.against = "is not a mirror";
    return found;
  }
  const auto& row = tail->row->row;
  const auto stored = at(row.seq);
  if (!stored) {
    return tl::unexpected(MirrorTrouble{MirrorTrouble::Kind::book, stored.error()});
  }
  if (!*stored) {
    found.against = fmt::format("goes on to event {}, which this book does not have", row.id);
  } else if (**stored != tail->row->hash) {
    found.against = fmt::format("has another event at number {}: another history", row.seq);
  }
  found.last = row.seq;
  found.last_signed = tail->signed_here;
  return found;
}

fs::path name_of(const fs::path& folder, const std::string& stem, const BookName& book, int n) {
  return folder / (n == 1 ? fmt::format("{}-{}.riseline", stem, book.tag)
                          : fmt::format("{}-{}-{}.riseline", stem, book.tag, n));
}

/// The book's name stands twice, so that one damaged byte does not take it away.
std::string header(const BookName& book) {
  return line_of(book) + line_of(book);
}

}  // namespace

Mirrored<Mirror> Mirror::open(PlainDisk& disk, const fs::path& folder, const std::string& stem,
                              const BookName& book, const HashAt& at) {
  Mirror mirror;
  for (int n = 1; n <= kMostFiles; ++n) {
    const auto path = name_of(folder, stem, book, n);
    mirror.path_ = path;
    auto file = disk.make(path);
    const bool made = file.has_value();
    if (!made && file.error() == std::errc::file_exists) file = disk.open(path);
    if (!file && not_ours(file.error())) {
      mirror.passed_over_.push_back(fmt::format("{} is not a plain file of ours", path.string()));
      continue;
    }
    if (!file) return mirror_trouble(path, file.error());
    const auto size = (*file)->size();
    if (!size) return mirror_trouble(path, size.error());
    auto found = fit(**file, path, *size, book, at);
    if (!found) return tl::unexpected(found.error());
    if (!found->against.empty()) {
      mirror.passed_over_.push_back(fmt::format("{} {}", path.string(), found->against));
      continue;
    }
    std::string begin = found->torn ? "\n" : "";
    if (!found->headed) begin += header(book);
    if (!begin.empty()) {
      if (const auto put = (*file)->write(*size, begin); !put)
        return mirror_trouble(path, put.error());
    }
    // Also what another run wrote and was stopped before it could sync.
    if (const auto done = (*file)->sync(); !done) return mirror_trouble(path, done.error());
    if (const auto done = disk.sync_folder(folder); !done)
      return mirror_trouble(path, done.error());
    mirror.file_ = std::move(*file);
    mirror.end_ = *size + begin.size();
    mirror.last_ = found->last;
    mirror.last_signed_ = found->last_signed;
    return mirror;
  }
  return mirror_trouble(folder, std::make_error_code(std::errc::file_exists));
}

MirrorTrouble Mirror::gone() const {
  return mirror_trouble(path_, std::make_error_code(std::errc::no_such_file_or_directory)).value();
}

Mirrored<void> Mirror::add(const std::vector<KeptRow>& rows, const std::vector<Signed>& heads) {
  if (!file_->in_place()) return tl::unexpected(gone());
  std::string lines;
  auto head = heads.begin();
  const auto add_heads = [&](std::int64_t up_to) {
    for (; head != heads.end() && head->seq <= up_to; ++head) lines += line_of(*head);
  };
  if (!rows.empty()) add_heads(rows.front().row.seq - 1);
  for (const auto& row : rows) {
    lines += line_of(row);
    add_heads(row.row.seq);
  }
  add_heads(std::numeric_limits<std::int64_t>::max());
  if (const auto put = file_->write(end_, lines); !put) return mirror_trouble(path_, put.error());
  if (const auto done = file_->sync(); !done) return mirror_trouble(path_, done.error());
  // Pulled or renamed while this was written.
  if (!file_->in_place()) return tl::unexpected(gone());
  end_ += lines.size();
  if (!rows.empty()) last_ = std::max(last_, rows.back().row.seq);
  last_signed_ = true;
  return {};
}

}  // namespace rb::store
