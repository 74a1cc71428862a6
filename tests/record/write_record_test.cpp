#include "record/form/write_record.h"

#include <doctest/doctest.h>
#include <sys/resource.h>

#include <algorithm>
#include <csignal>
#include <fstream>
#include <map>
#include <set>

#include "record/form/edition.h"

#include "sample.h"
#include "temp_folder.h"

using namespace rb;
namespace fs = std::filesystem;

namespace {

const std::vector<Format> kAll{Format::pdf,  Format::xlsx, Format::csv,
                               Format::json, Format::png,  Format::html};

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator{folder}, fs::directory_iterator{}));
}

// While it lives no file can grow past so many bytes: a disk without room.
class FullDisk {
 public:
  explicit FullDisk(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    getrlimit(RLIMIT_FSIZE, &was_);
    const rlimit limit{bytes, was_.rlim_max};
    setrlimit(RLIMIT_FSIZE, &limit);
  }
  ~FullDisk() {
    setrlimit(RLIMIT_FSIZE, &was_);
    std::signal(SIGXFSZ, handler_);
  }
  FullDisk(const FullDisk&) = delete;
  FullDisk& operator=(const FullDisk&) = delete;

 private:
  rlimit was_{};
  void (*handler_)(int);
};

}  // namespace

TEST_CASE("formats are known by their names") {
  CHECK(parse_format("pdf") == Format::pdf);
  CHECK(parse_format("csv") == Format::csv);
  CHECK_FALSE(parse_format("PDF"));
  CHECK_FALSE(parse_format(""));
}

TEST_CASE("files are named for the day and the book, whatever the book is called") {
  DailyRecord record = test::sample_record();
  CHECK(record_name(record) == "consolidation-2026-03-02-TABLET-07");
  record.book.tag = "../../etc/ñ x";
  CHECK(record_name(record) == "consolidation-2026-03-02-etc-x");
  record.book.tag = "";
  CHECK(record_name(record) == "consolidation-2026-03-02");
}

TEST_CASE("every format is written, and the paths are told") {
  const test::TempFolder folder;
  const auto written = write_record(test::sample_record(), folder.path(), kAll);
  REQUIRE_MESSAGE(written, to_text(written.error()));
  CHECK(written->size() == files_in(folder.path()));
  for (const fs::path& path : *written) {
    CAPTURE(path.string());
    CHECK(fs::file_size(path) > 20);
  }
  const std::string stem = (folder.path() / "consolidation-2026-03-02-TABLET-07").string();
  for (const std::string end : {".pdf", ".html", ".xlsx", ".json", "-index.csv", "-lifts.csv",
                                "-runs.csv", "-findings.csv", "-dose-1-W1-near.png"}) {
    CAPTURE(end);
    CHECK(fs::exists(stem + end));
  }
}

TEST_CASE("no table without rows becomes a file, and the index lists those that have some") {
  const test::TempFolder folder;
  const auto written = write_record(test::sample_record(), folder.path(), {Format::csv});
  REQUIRE(written);
  const std::string index = test::bytes_of(written->front());
  CHECK(written->front().filename() == "consolidation-2026-03-02-TABLET-07-index.csv");
  for (const fs::path& path : *written) {
    CAPTURE(path.string());
    const std::string text = test::bytes_of(path);
    CHECK(std::count(text.begin(), text.end(), '\n') > 1);
    if (path == written->front()) continue;
    CHECK(index.find("\n" + path.filename().string() + ",") != std::string::npos);
  }
  CHECK(static_cast<std::size_t>(std::count(index.begin(), index.end(), '\n')) == written->size());
  CHECK(index.find("curing") == std::string::npos);
}

TEST_CASE("the same record into two folders is byte for byte the same") {
  const test::TempFolder one;
  const test::TempFolder two;
  const auto once = write_record(test::sample_record(), one.path(), kAll);
  const auto twice = write_record(test::sample_record(), two.path(), kAll);
  REQUIRE(once);
  REQUIRE(twice);
  REQUIRE(once->size() == twice->size());
  for (std::size_t i = 0; i < twice->size(); ++i) {
    CAPTURE((*twice)[i].string());
    CHECK((*once)[i].filename() == (*twice)[i].filename());
    CHECK(test::bytes_of((*twice)[i]) == test::bytes_of((*once)[i]));
  }
}

TEST_CASE("writing again makes the next edition, which names the one before; nothing is changed") {
  const test::TempFolder folder;
  std::map<fs::path, std::string> before;
  for (int edition = 1; edition <= 3; ++edition) {
    CAPTURE(edition);
    const auto written = write_record(test::sample_record(), folder.path(), kAll);
    REQUIRE_MESSAGE(written, to_text(written.error()));
    for (const auto& [path, bytes] : before) CHECK(test::bytes_of(path) == bytes);
    for (const fs::path& path : *written) {
      CAPTURE(path.string());
      CHECK(before.emplace(path, test::bytes_of(path)).second);
    }
    CHECK(before.size() == files_in(folder.path()));
  }
  const std::string stem = (folder.path() / "consolidation-2026-03-02-TABLET-07").string();
  for (const char* end : {"-2.pdf", "-3.pdf", "-2.xlsx", "-2-lifts.csv", "-3-edition.csv",
                          "-2-dose-1-W1-near.png", "-3.json"}) {
    CAPTURE(end);
    CHECK(fs::exists(stem + end));
  }
  const std::string third = test::bytes_of(stem + "-3-edition.csv");
  CHECK(third.find("3,consolidation-2026-03-02-TABLET-07-2.pdf,") != std::string::npos);
  CHECK(test::bytes_of(stem + "-3.json").find("TABLET-07-2.pdf") != std::string::npos);
  CHECK(test::bytes_of(stem + "-2.pdf") != test::bytes_of(stem + ".pdf"));
  CHECK(test::bytes_of(stem + "-2-dose-1-W1-near.png") !=
        test::bytes_of(stem + "-dose-1-W1-near.png"));
}

// FIPS 180-4; the digest of "abc" is the standard's own worked example (from memory).
TEST_CASE("the earlier edition is told by the SHA-256 of its file") {
  const test::TempFolder folder;
  std::ofstream(folder.path() / "day.pdf") << "abc";
  std::ofstream(folder.path() / "day-lifts.csv") << "x";
  const NextEdition next = next_edition(folder.path(), "day");
  CHECK(next.number == 2);
  REQUIRE(next.earlier);
  CHECK(next.earlier->file == "day.pdf");
  CHECK(next.earlier->sha256 == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

TEST_CASE("editions are told apart from other words and other books") {
  const test::TempFolder folder;
  const auto put = [&](const char* name) { std::ofstream(folder.path() / name) << "x"; };
  CHECK(next_edition(folder.path(), "day").number == 1);
  put("daylight.pdf");
  put("other-day.pdf");
  put("day");
  put("day-7");
  CHECK(next_edition(folder.path(), "day").number == 1);
  put("day-lifts.csv");
  CHECK(next_edition(folder.path(), "day").number == 2);
  put("day-12.json");
  CHECK(next_edition(folder.path(), "day").number == 13);
  put("day-99999999999999999999.json");
  CHECK(next_edition(folder.path(), "day").number == 13);
}

TEST_CASE("elements whose names differ only in signs have pictures of their own") {
  DailyRecord record = test::sample_record();
  REQUIRE_FALSE(record.pours.front().dose_maps.empty());
  DoseMap map = record.pours.front().dose_maps.front();
  record.pours.front().dose_maps.clear();
  for (const char* name : {"A/B", "A:B", "a-b", "A B near-2", "\u00D1", "\u00C1"}) {
    map.element = name;
    record.pours.front().dose_maps.push_back(map);
  }
  const test::TempFolder folder;
  const auto written = write_record(record, folder.path(), {Format::png});
  REQUIRE_MESSAGE(written, to_text(written.error()));
  std::set<std::string> names;
  for (fs::path path : *written) {
    std::string small = path.filename().string();
    for (char& c : small) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    names.insert(small);
  }
  CHECK(names.size() == 6);
  CHECK(files_in(folder.path()) == 6);
}

TEST_CASE("a folder that is not there is named in the error") {
  const test::TempFolder folder;
  const fs::path missing = folder.path() / "nowhere";
  const auto written = write_record(test::sample_record(), missing, kAll);
  REQUIRE_FALSE(written);
  CHECK(written.error().kind == Error::Kind::input);
  CHECK(written.error().where.text().find("nowhere") != std::string::npos);
  CHECK_FALSE(fs::exists(missing));
}

TEST_CASE("a folder in the place of a file is left, and the record takes the next number") {
  const test::TempFolder folder;
  fs::create_directory(folder.path() / "consolidation-2026-03-02-TABLET-07.json");
  const auto written =
      write_record(test::sample_record(), folder.path(), {Format::pdf, Format::json});
  REQUIRE_MESSAGE(written, to_text(written.error()));
  CHECK(written->front().filename() == "consolidation-2026-03-02-TABLET-07-2.pdf");
  CHECK(files_in(folder.path()) == 3);
}

TEST_CASE("a disk that fills up leaves nothing behind, and the older record stays") {
  const test::TempFolder folder;
  REQUIRE(write_record(test::sample_record(), folder.path(), {Format::json, Format::pdf}));
  const fs::path pdf = folder.path() / "consolidation-2026-03-02-TABLET-07.pdf";
  const std::string older = test::bytes_of(pdf);
  {
    const FullDisk full{20000};
    const auto written = write_record(test::sample_record("us"), folder.path(), {Format::pdf});
    REQUIRE_FALSE(written);
    CHECK(written.error().kind == Error::Kind::input);
  }
  CHECK(files_in(folder.path()) == 2);
  CHECK(test::bytes_of(pdf) == older);
}

TEST_CASE("a workbook that finds no room is an error, not half a workbook") {
  const test::TempFolder folder;
  {
    const FullDisk full{3000};
    const auto written = write_record(test::sample_record(), folder.path(), {Format::xlsx});
    CHECK_FALSE(written);
  }
  CHECK(files_in(folder.path()) == 0);
}
