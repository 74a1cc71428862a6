#include "record/form/edition.h"

#include <fmt/format.h>
#include <glib.h>

#include <array>
#include <charconv>
#include <fstream>
#include <map>
#include <memory>
#include <set>
#include <string_view>

namespace rb {

namespace fs = std::filesystem;

namespace {

// The edition a file's name tells, 0 when it is none of this record's.
int edition_of(std::string_view file, std::string_view name) {
  if (!file.starts_with(name)) return 0;
  file.remove_prefix(name.size());
  if (file.starts_with('.')) return 1;
  if (!file.starts_with('-')) return 0;
  file.remove_prefix(1);
  int number = 0;
  const auto [end, wrong] = std::from_chars(file.data(), file.data() + file.size(), number);
  if (wrong == std::errc::invalid_argument) return 1;  // a word: a table or a picture
  if (wrong != std::errc{} || end == file.data() + file.size()) return 0;
  const bool whole = *end == '.' || *end == '-';
  return whole && number > 1 && number < 1'000'000 ? number : 0;
}

std::string sha256_of(const fs::path& path) {
  std::ifstream in{path, std::ios::binary};
  const std::unique_ptr<GChecksum, void (*)(GChecksum*)> sum{g_checksum_new(G_CHECKSUM_SHA256),
                                                             &g_checksum_free};
  std::array<char, 1 << 14> part{};
  while (in) {
    in.read(part.data(), part.size());
    g_checksum_update(sum.get(), reinterpret_cast<const guchar*>(part.data()),
                      static_cast<gssize>(in.gcount()));
  }
  return in.eof() ? g_checksum_get_string(sum.get()) : std::string{};
}

// The file an edition is known by: what is printed and signed before what is only data.
const fs::path& chief(const std::set<fs::path>& files) {
  for (const char* end : {".pdf", ".xlsx", ".json"}) {
    for (const fs::path& file : files) {
      if (file.extension() == end) return file;
    }
  }
  return *files.begin();
}

}  // namespace

NextEdition next_edition(const fs::path& folder, const std::string& name) {
  std::map<int, std::set<fs::path>> found;
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder, ignored)) {
    if (const int number = edition_of(entry.path().filename().string(), name); number > 0) {
      found[number].insert(entry.path());
    }
  }
  if (found.empty()) return {};
  const auto& [last, files] = *found.rbegin();
  const fs::path& file = chief(files);
  EarlierEdition earlier{file.filename().string(), {}};
  if (fs::is_regular_file(fs::symlink_status(file, ignored))) earlier.sha256 = sha256_of(file);
  return {last + 1, std::move(earlier)};
}

std::string edition_name(const std::string& name, int edition) {
  return edition > 1 ? fmt::format("{}-{}", name, edition) : name;
}

}  // namespace rb
