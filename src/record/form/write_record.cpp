#include "record/form/write_record.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "base/unfinished.h"
#include "record/form/archive_pdf.h"
#include "record/form/csv.h"
#include "record/form/edition.h"
#include "record/form/html.h"
#include "record/form/json.h"
#include "record/form/xlsx.h"
#include "record/model/book_words.h"
#include "record/model/table.h"
#include "record/told/shown.h"

namespace rb {

namespace {

namespace fs = std::filesystem;

struct NewFile {
  fs::path path;
  std::string bytes;
};

constexpr std::array<std::pair<std::string_view, Format>, 6> kFormats{{
    {"pdf", Format::pdf},
    {"xlsx", Format::xlsx},
    {"csv", Format::csv},
    {"json", Format::json},
    {"png", Format::png},
    {"html", Format::html},
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

// A name no other file of the record has, on a file system that knows no capitals either: two
// elements may differ in signs only that a file's name cannot hold.
std::string distinct(const std::string& wanted, std::set<std::string>& taken) {
  for (int n = 1;; ++n) {
    std::string name = n == 1 ? wanted : fmt::format("{}-{}", wanted, n);
    std::string small = name;
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    if (taken.insert(small).second) return name;
  }
}

void add_maps(const DailyRecord& record, const fs::path& stem, std::vector<NewFile>& files) {
  std::set<std::string> taken;
  for (std::size_t i = 0; i < record.pours.size(); ++i) {
    for (const DoseMap& map : record.pours[i].dose_maps) {
      const std::string word = file_word(map.element);
      const std::string name = distinct(
          fmt::format("{}-{}-{}", i + 1, word.empty() ? "element" : word, to_text(map.side)),
          taken);
      files.push_back({fmt::format("{}-dose-{}.png", stem.string(), name),
                       dose_map_png(map, voice_of(record), 1600, Shown{record}.edition())});
    }
  }
}

// A file for every table that has rows, and before them one that lists them.
void add_tables(const DailyRecord& record, const fs::path& stem, std::vector<NewFile>& files) {
  Table index{"index", "Files", {}, {}};
  index.columns = {{"file", "File"}, {"title", "Title"}, {"rows", "Rows", Measure::count}};
  std::vector<NewFile> some;
  const auto add = [&](const Table& table) {
    const fs::path file = fmt::format("{}-{}.csv", stem.string(), table.key);
    index.rows.push_back({file.filename().string(), Shown{record}.title(table),
                          static_cast<double>(table.rows.size())});
    some.push_back({file, to_csv(table)});
  };
  add(book_table(record));
  for (const Table& table : tables_of(record)) {
    if (!table.rows.empty()) add(table);
  }
  files.push_back({stem.string() + "-index.csv", to_csv(index)});
  for (NewFile& file : some) files.push_back(std::move(file));
}

Result<std::vector<NewFile>> files_of(const DailyRecord& record, const fs::path& stem,
                                      const std::vector<Format>& formats, const Seal& seal) {
  std::vector<NewFile> files;
  // One text, in the file and attached to the paper.
  const auto json = [&] { return seal ? seal(to_json(record)) : to_json(record); };
  for (const Format format : formats) {
    switch (format) {
      case Format::pdf:
      case Format::xlsx: {
        auto bytes = format == Format::pdf ? to_archive_pdf(record, json()) : to_xlsx(record);
        if (!bytes) return Failed{bytes.error()};
        files.push_back(
            {stem.string() + (format == Format::pdf ? ".pdf" : ".xlsx"), std::move(*bytes)});
        break;
      }
      case Format::csv:
        add_tables(record, stem, files);
        break;
      case Format::json:
        files.push_back({stem.string() + ".json", json()});
        break;
      case Format::html:
        files.push_back({stem.string() + ".html", to_html(record)});
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
                                           const std::vector<Format>& formats, const Seal& seal) {
  std::error_code error;
  if (!fs::is_directory(folder, error)) {
    return fail(Error::Kind::input, folder.string(), said("there is no such folder"),
                said("Make the folder, or name another"));
  }
  const std::string name = record_name(record);
  NextEdition next = next_edition(folder, name);
  DailyRecord told = record;
  told.edition = next.number;
  told.earlier = std::move(next.earlier);
  auto files = files_of(told, folder / edition_name(name, told.edition), formats, seal);
  if (!files) return Failed{files.error()};
  std::vector<Unfinished> parts;
  for (const NewFile& file : *files) {
    auto part = Unfinished::beside(file.path);
    if (!part) return Failed{part.error()};
    if (auto written = part->write(file.bytes); !written) return Failed{written.error()};
    parts.push_back(std::move(*part));
  }
  std::vector<fs::path> paths;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (auto put = parts[i].put(Place::must_be_free); !put) {
      for (const fs::path& path : paths) fs::remove(path, error);  // put there by this very call
      return Failed{put.error()};
    }
    paths.push_back((*files)[i].path);
  }
  return paths;
}

}  // namespace rb
