#include "record/write_record.h"

#include <doctest/doctest.h>
#include <sys/resource.h>

#include <csignal>

#include "sample.h"
#include "temp_folder.h"

using namespace rb;
namespace fs = std::filesystem;

namespace {

const std::vector<Format> kAll{Format::pdf, Format::xlsx, Format::csv, Format::json, Format::png};

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
  for (const std::string end : {".pdf", ".xlsx", ".json", "-lifts.csv", "-runs.csv",
                                "-findings.csv", "-dose-1-W1-near.png"}) {
    CAPTURE(end);
    CHECK(fs::exists(stem + end));
  }
}

TEST_CASE("writing again replaces, byte for byte the same") {
  const test::TempFolder folder;
  const auto once = write_record(test::sample_record(), folder.path(), kAll);
  REQUIRE(once);
  std::vector<std::string> bytes;
  for (const fs::path& path : *once) bytes.push_back(test::bytes_of(path));
  const auto twice = write_record(test::sample_record(), folder.path(), kAll);
  REQUIRE(twice);
  REQUIRE(*twice == *once);
  for (std::size_t i = 0; i < twice->size(); ++i) {
    CAPTURE((*twice)[i].string());
    CHECK(test::bytes_of((*twice)[i]) == bytes[i]);
  }
}

TEST_CASE("a folder that is not there is named in the error") {
  const test::TempFolder folder;
  const fs::path missing = folder.path() / "nowhere";
  const auto written = write_record(test::sample_record(), missing, kAll);
  REQUIRE_FALSE(written);
  CHECK(written.error().kind == Error::Kind::input);
  CHECK(written.error().where.find("nowhere") != std::string::npos);
  CHECK_FALSE(fs::exists(missing));
}

TEST_CASE("a folder that cannot be written leaves nothing behind") {
  const test::TempFolder folder;
  // A folder where the second file's unfinished name should be: even root cannot write there.
  const fs::path name = folder.path() / ".consolidation-2026-03-02-TABLET-07.json.part";
  fs::create_directory(name);
  const auto written =
      write_record(test::sample_record(), folder.path(), {Format::pdf, Format::json});
  REQUIRE_FALSE(written);
  CHECK(written.error().kind == Error::Kind::input);
  CHECK(written.error().where.find(folder.path().string()) != std::string::npos);
  CHECK(files_in(folder.path()) == 1);
  CHECK(fs::is_directory(name));
}

TEST_CASE("a folder in the place of a file is refused before anything is written") {
  const test::TempFolder folder;
  fs::create_directory(folder.path() / "consolidation-2026-03-02-TABLET-07.json");
  const auto written =
      write_record(test::sample_record(), folder.path(), {Format::pdf, Format::json});
  REQUIRE_FALSE(written);
  CHECK(written.error().where.find(".json") != std::string::npos);
  CHECK(files_in(folder.path()) == 1);
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
