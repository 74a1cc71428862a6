// What is on the pages is asked of pdftotext (poppler-utils), a program of others.
#include "record/pdf/pdf.h"
#include "base/short_code.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <regex>
#include <sstream>

#include "sample.h"
#include "temp_folder.h"

using namespace rb;

namespace {

std::string pdf_of(const DailyRecord& record) {
  const auto bytes = to_pdf(record);
  REQUIRE_MESSAGE(bytes, to_text(bytes.error()));
  return *bytes;
}

// What a program says of a document.
std::string asked(const std::string& program, const std::string& pdf, const std::string& after) {
  const test::TempFolder folder;
  const auto file = folder.path() / "record.pdf";
  std::ofstream(file, std::ios::binary) << pdf;
  return test::output_of(fmt::format("{} '{}' {}", program, file.string(), after));
}

std::string told(const std::string& pdf, const std::string& options) {
  return asked("pdftotext " + options, pdf, "-");
}

struct Word {
  double x0, y0, x1, y1;
  std::string text;
};
struct PageOfWords {
  double width, height;
  std::vector<Word> words;
};

std::vector<PageOfWords> pages_of(const std::string& pdf) {
  static const std::regex kPage{R"re(<page width="([\d.]+)" height="([\d.]+)">)re"};
  static const std::regex kWord{
      R"re(<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)</word>)re"};
  std::istringstream lines(told(pdf, "-bbox"));
  std::vector<PageOfWords> pages;
  std::smatch found;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_search(line, found, kPage)) {
      pages.push_back({std::stod(found[1]), std::stod(found[2]), {}});
    } else if (std::regex_search(line, found, kWord)) {
      REQUIRE_FALSE(pages.empty());
      pages.back().words.push_back({std::stod(found[1]), std::stod(found[2]), std::stod(found[3]),
                                    std::stod(found[4]), found[5]});
    }
  }
  return pages;
}

// Nothing beyond the paper's edge (a printer's own margin is 5 mm, 14 points), and no words on
// each other.
void check_pages(const std::vector<PageOfWords>& pages) {
  REQUIRE_FALSE(pages.empty());
  for (std::size_t p = 0; p < pages.size(); ++p) {
    CAPTURE(p);
    const PageOfWords& page = pages[p];
    REQUIRE_FALSE(page.words.empty());
    std::string all;
    for (const Word& w : page.words) {
      CAPTURE(w.text);
      REQUIRE(w.x0 >= 14);
      REQUIRE(w.x1 <= page.width - 14);
      REQUIRE(w.y0 >= 14);
      REQUIRE(w.y1 <= page.height - 14);
      all += w.text + " ";
    }
    CHECK(all.find(fmt::format("page {} of {}", p + 1, pages.size())) != std::string::npos);
    CHECK(all.find(test::kBook.head_hash) != std::string::npos);
    CHECK(all.find(short_code(test::kBook.head_hash)) != std::string::npos);
    CHECK(all.find("187 events,") != std::string::npos);
    for (std::size_t i = 0; i < page.words.size(); ++i) {
      for (std::size_t k = i + 1; k < page.words.size(); ++k) {
        const Word& a = page.words[i];
        const Word& b = page.words[k];
        const double across = std::min(a.x1, b.x1) - std::max(a.x0, b.x0);
        const double down = std::min(a.y1, b.y1) - std::max(a.y0, b.y0);
        CAPTURE(a.text);
        CAPTURE(b.text);
        // a word's box is taller than its letters: lines may share a third of it
        REQUIRE_FALSE((across > 1.0 && down > 0.45 * std::min(a.y1 - a.y0, b.y1 - b.y0)));
      }
    }
  }
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("the page says what the record says, with every accent and sign") {
  const std::string text = told(pdf_of(test::sample_record()), "-layout");
  for (const std::string part : {"Daily consolidation record",
                                 "Monday 2 March 2026",
                                 "UTC-05:00",
                                 "Peñón Court",
                                 "Inés Acuña",
                                 "R. Ōta",
                                 "≤ 5 mm",
                                 "19 °C",
                                 "05:45:10",
                                 "STOP",
                                 "MEND",
                                 "2.31",
                                 "m/h",
                                 "height 2.3 → 2.35",
                                 "read from the wrong mark",
                                 "struck",
                                 "honeycomb",
                                 "2026-03-03",
                                 "placed as logged",
                                 "Inspector",
                                 "Form pressure",
                                 "Electricity",
                                 "Overhead motors",
                                 "The tool advises",
                                 "48121",
                                 "spare inverter due 05:30",
                                 "pump line blocked",
                                 "vibrated by hand",
                                 "14.58 m³",
                                 "TABLET-07"}) {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
  CHECK(text.find("�") == std::string::npos);
}

TEST_CASE("nothing on paper says that anything is safe") {
  const std::string text = told(pdf_of(test::sample_record()), "-layout");
  CHECK_FALSE(std::regex_search(text, std::regex{"\\b(is|are) safe\\b"}));
}

TEST_CASE("US units show feet and psf on Letter paper, SI metres and kPa on A4") {
  const std::string us = pdf_of(test::sample_record("us"));
  const std::string si = pdf_of(test::sample_record("si"));
  CHECK(told(us, "-layout").find("7.58 ft/h") != std::string::npos);
  CHECK(told(us, "-layout").find("m/h") == std::string::npos);
  CHECK(told(us, "-layout").find("kPa") == std::string::npos);
  CHECK(told(si, "-layout").find("psf") == std::string::npos);
  CHECK(pages_of(us)[0].width == doctest::Approx(8.5 * 72));
  CHECK(pages_of(us)[0].height == doctest::Approx(11 * 72));
  CHECK(pages_of(si)[0].width == doctest::Approx(210 / 25.4 * 72).epsilon(0.001));
  CHECK(pages_of(si)[0].height == doctest::Approx(297 / 25.4 * 72).epsilon(0.001));
}

TEST_CASE("three hundred runs break over pages and none is cut") {
  const std::string pdf = pdf_of(test::sample_record("si", 300));
  const auto pages = pages_of(pdf);
  CHECK(pages.size() > 5);
  check_pages(pages);
  const std::string text = told(pdf, "-layout");
  for (int i = 0; i < 300; ++i) {
    const int second = 2 * 3600 + 35 * 60 + 20 * i;  // after 05:00 local
    const std::string clock =
        fmt::format("{:02}:{:02}:{:02}", 5 + second / 3600, second / 60 % 60, second % 60);
    CAPTURE(clock);
    REQUIRE(text.find(clock) != std::string::npos);
  }
  CHECK(count(text, "Pressure at") > 4);  // the headings stand on every page of the table
}

TEST_CASE("a note longer than a page is printed to its last word") {
  std::string note = "\"";
  for (int i = 0; i < 2000; ++i) note += fmt::format("brick{:04} ", i);
  note += "\"";
  const std::string pdf = pdf_of(test::sample_record("si", 0, note));
  check_pages(pages_of(pdf));
  const std::string text = told(pdf, "-raw");
  for (int i = 0; i < 2000; ++i)
    REQUIRE(text.find(fmt::format("brick{:04}", i)) != std::string::npos);
}

TEST_CASE("a word without an end is broken, not cut") {
  const std::string pdf =
      pdf_of(test::sample_record("si", 0, "\"" + std::string(3000, 'q') + "\""));
  check_pages(pages_of(pdf));
  CHECK(count(told(pdf, "-raw"), "q") >= 3000);
}

TEST_CASE("a long verdict is printed to its last word") {
  DailyRecord record = test::sample_record();
  for (const char* words :
       {"reviewed with remarks on the second lift",
        "reviewed with remarks on the second lift, the joint of bay 2 and the row "
        "that ran short, to be looked at again when the face is stripped"}) {
    record.pours[0].signatures[0].verdict = words;
    const std::string pdf = pdf_of(record);
    check_pages(pages_of(pdf));
    std::istringstream each(words);
    const std::string text = told(pdf, "-raw");
    for (std::string word; each >> word;) {
      CAPTURE(word);
      CHECK(text.find(word) != std::string::npos);
    }
    CHECK(text.find("…") == std::string::npos);
  }
}

TEST_CASE("long names do not run over their neighbours") {
  DailyRecord record = test::sample_record();
  const std::string endless(400, 'W');
  record.site = endless;
  record.book.tag = endless;
  PourRecord& pour = record.pours.front();
  pour.name = "a name of very many words " + endless;
  for (PersonLine& person : pour.people) person.name = endless;
  for (SignatureLine& line : pour.signatures) line.by = line.verdict = endless;
  pour.elements[0].element = endless;
  pour.runs[0].row = endless;
  pour.dose_maps[0].element = endless;
  check_pages(pages_of(pdf_of(record)));
}

TEST_CASE("the document is dated by the record and is the same twice, in any time zone") {
  const DailyRecord record = test::sample_record();
  const std::string here = pdf_of(record);
  CHECK(here == pdf_of(record));
  const char* was = std::getenv("TZ");
  const std::string kept = was != nullptr ? was : "";
  setenv("TZ", "Pacific/Auckland", 1);
  tzset();
  CHECK(here == pdf_of(record));
  if (was != nullptr) {
    setenv("TZ", kept.c_str(), 1);
  } else {
    unsetenv("TZ");
  }
  tzset();
  const std::string facts = asked("pdfinfo -rawdates", here, "");
  CHECK(std::regex_search(facts, std::regex{"CreationDate: +(D:)?20260303140001Z"}));
  CHECK(std::regex_search(facts, std::regex{"ModDate: +(D:)?20260303140001Z"}));
}

TEST_CASE("a day without pours gives a page that says so") {
  const DailyRecord record =
      make_daily_record({}, *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook);
  const std::string pdf = pdf_of(record);
  CHECK(told(pdf, "-layout").find("No pour was logged on this day.") != std::string::npos);
  check_pages(pages_of(pdf));
}
