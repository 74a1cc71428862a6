#include "record/write_record.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

#include "record/book_words.h"
#include "record/csv.h"
#include "record/json.h"
#include "record/pdf.h"
#include "record/table.h"
#include "record/xlsx.h"

namespace rb {

namespace {

namespace fs = std::filesystem;

struct NewFile {
  fs::path path;
  std::string bytes;
};

constexpr std::array<std::pair<std::string_view, Format>, 5> kFormats{{
    {"pdf", Format::pdf},
    {"xlsx", Format::xlsx},
    {"csv", Format::csv},
    {"json", Format::json},
    {"png", Format::png},
}};

// Letters and figures; all else becomes one hyphen.
std::string file_word(std::string_view text) {
  std::string word;
  for (const char c : text) {
    const bool plain = (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    if (plain) {
      word += c;
    } else if (!word.empty() && word.back() != '-') {
      word += '-';
    }
  }
  while (!word.empty() && word.back() == '-') word.pop_back();
  return word.substr(0, 40);
}

fs::path part_of(const fs::path& path) {
  return path.parent_path() / ("." + path.filename().string() + ".part");
}

Failed cannot(const fs::path& path, const char* what) {
  return fail(Error::Kind::input, path.string(), fmt::format("{}: {}", what, std::strerror(errno)),
              "Choose a folder that is there, may be written and has room");
}

// The unfinished files; removes them unless all went well.
class Parts {
 public:
  Parts() = default;
  ~Parts() {
    std::error_code ignored;
    for (const fs::path& part : begun_) fs::remove(part, ignored);
  }
  Parts(const Parts&) = delete;
  Parts& operator=(const Parts&) = delete;
  void begun(const fs::path& part) { begun_.push_back(part); }
  void keep() { begun_.clear(); }

 private:
  std::vector<fs::path> begun_;
};

Result<void> put(const NewFile& file, Parts& parts) {
  const fs::path part = part_of(file.path);
  const int fd = ::open(part.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (fd < 0) return cannot(file.path, "cannot be written");
  parts.begun(part);
  std::size_t done = 0;
  bool good = true;
  while (good && done < file.bytes.size()) {
    const ssize_t wrote = ::write(fd, file.bytes.data() + done, file.bytes.size() - done);
    if (wrote < 0 && errno == EINTR) continue;
    good = wrote > 0;
    if (good) done += static_cast<std::size_t>(wrote);
  }
  good = good && ::fsync(fd) == 0;
  const int why = errno;
  ::close(fd);
  errno = why;
  if (!good) return cannot(file.path, "could not be written whole");
  return {};
}

void add_maps(const DailyRecord& record, const fs::path& stem, std::vector<NewFile>& files) {
  for (std::size_t i = 0; i < record.pours.size(); ++i) {
    for (const DoseMap& map : record.pours[i].dose_maps) {
      files.push_back({fmt::format("{}-dose-{}-{}-{}.png", stem.string(), i + 1,
                                   file_word(map.element), to_text(map.side)),
                       dose_map_png(map, record.units)});
    }
  }
}

Result<std::vector<NewFile>> files_of(const DailyRecord& record, const fs::path& stem,
                                      const std::vector<Format>& formats) {
  std::vector<NewFile> files;
  for (const Format format : formats) {
    switch (format) {
      case Format::pdf:
      case Format::xlsx: {
        auto bytes = format == Format::pdf ? to_pdf(record) : to_xlsx(record);
        if (!bytes) return Failed{bytes.error()};
        files.push_back(
            {stem.string() + (format == Format::pdf ? ".pdf" : ".xlsx"), std::move(*bytes)});
        break;
      }
      case Format::csv:
        files.push_back({stem.string() + "-book.csv", to_csv(book_table(record))});
        for (const Table& table : tables_of(record)) {
          files.push_back({fmt::format("{}-{}.csv", stem.string(), table.key), to_csv(table)});
        }
        break;
      case Format::json:
        files.push_back({stem.string() + ".json", to_json(record)});
        break;
      case Format::png:
        add_maps(record, stem, files);
        break;
    }
  }
  return files;
}

}  // namespace

std::optional<Format> parse_format(std::string_view text) {
  for (const auto& [word, format] : kFormats) {
    if (word == text) return format;
  }
  return std::nullopt;
}

std::string record_name(const DailyRecord& record) {
  const std::string tag = file_word(record.book.tag);
  return "consolidation-" + day_text(record) + (tag.empty() ? "" : "-" + tag);
}

Result<std::vector<fs::path>> write_record(const DailyRecord& record, const fs::path& folder,
                                           const std::vector<Format>& formats) {
  std::error_code error;
  if (!fs::is_directory(folder, error)) {
    return fail(Error::Kind::input, folder.string(), "there is no such folder",
                "Make the folder, or name another");
  }
  auto files = files_of(record, folder / record_name(record), formats);
  if (!files) return Failed{files.error()};
  for (const NewFile& file : *files) {
    if (fs::is_directory(file.path, error)) {
      return fail(Error::Kind::input, file.path.string(), "is a folder",
                  "Move it away, or choose another folder");
    }
  }
  Parts parts;
  for (const NewFile& file : *files) {
    if (auto written = put(file, parts); !written) return Failed{written.error()};
  }
  std::vector<fs::path> paths;
  for (const NewFile& file : *files) {
    if (::rename(part_of(file.path).c_str(), file.path.c_str()) != 0) {
      return cannot(file.path, "could not take its name");
    }
    paths.push_back(file.path);
  }
  parts.keep();
  const int fd = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd >= 0) {  // the names too survive a loss of power, where the file system can promise it
    ::fsync(fd);
    ::close(fd);
  }
  return paths;
}

}  // namespace rb
