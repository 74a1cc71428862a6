// Asked of pdffonts (poppler-utils), a program of others.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <sstream>

#include "record/pdf/pdf.h"
#include "sample.h"
#include "temp_folder.h"

using namespace rb;

TEST_CASE("the typeface comes along where none is installed") {
  if (const char* to = std::getenv("RECORD_TEST_TO")) {  // the second run of this program, below
    const auto pdf = to_pdf(test::sample_record());
    REQUIRE(pdf);
    std::ofstream(to, std::ios::binary) << *pdf;
    return;
  }
  const test::TempFolder folder;
  const auto none = folder.path() / "fonts.conf";
  const auto made = folder.path() / "record.pdf";
  std::ofstream(none) << "<fontconfig></fontconfig>";
  const auto self = std::filesystem::read_symlink("/proc/self/exe");
  test::output_of(fmt::format(
      "FONTCONFIG_FILE='{}' RECORD_TEST_TO='{}' '{}' --test-case='the typeface comes along*' 2>&1",
      none.string(), made.string(), self.string()));
  std::istringstream lines(test::output_of(fmt::format("pdffonts '{}'", made.string())));
  std::string all;
  std::string line;
  std::getline(lines, line);  // the headings
  REQUIRE(line.find(" emb ") != std::string::npos);
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    CAPTURE(line);
    CHECK(line.find("B612") != std::string::npos);
    CHECK(line.find(" yes ") != std::string::npos);  // embedded
    all += line;
  }
  CHECK(all.find("B612-Regular") != std::string::npos);
  CHECK(all.find("B612-Bold") != std::string::npos);
}
