// Days as they come: over midnight, of 23 and 25 hours, of several pours.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "record/form/archive_pdf.h"
#include "record/form/html.h"
#include "record/model/shown.h"
#include "sample.h"
#include "temp_folder.h"

using namespace rb;

namespace {

std::string read_pages(const DailyRecord& record, const char* pages = "") {
  const test::TempFolder folder;
  const auto file = folder.path() / "record.pdf";
  const auto bytes = to_archive_pdf(record);
  REQUIRE(bytes);
  std::ofstream(file, std::ios::binary) << *bytes;
  return test::output_of(fmt::format("pdftotext -layout {} '{}' -", pages, file.string()));
}

std::size_t times_in(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("a day of three pours: each in the first page's table, and each whole and once") {
  const test::Sample one = test::sample_pour();
  test::Sample two = test::sample_pour();
  test::Sample three = test::sample_pour();
  const Moment day = *parse_day("2026-03-02", test::kOffset);
  DailyRecord record =
      make_daily_record({one.input(), two.input(), three.input()}, day, test::kOffset, test::kBook);
  record.pours[1].name = "Column K7";
  record.pours[2].name = "Deck D2";
  const std::string first = read_pages(record, "-f 1 -l 1");
  for (const std::string name : {"Wall W1, axis", "Column K7", "Deck D2"}) {
    CAPTURE(name);
    CHECK(times_in(first, name) == 1);
  }
  const std::string all = read_pages(record);
  CHECK(times_in(all, "Runs of the rows") == 3);
  CHECK(times_in(all, "Cautions in full") == 1);
  CHECK(times_in(to_html(record), "<h2>") == 3);
}

TEST_CASE("the cautions stand on the first page, in one line each") {
  for (const char* units : {"si", "us"}) {
    DailyRecord record = test::sample_record(units);
    for (const Language language : Language::all()) {
      record.language = language;
      const std::string first = read_pages(record, "-f 1 -l 1");
      for (const std::string& caution : short_cautions()) {
        const std::string told = Shown{record}.told(caution);
        CAPTURE(told);
        CHECK(times_in(first, told) == 1);
      }
    }
  }
}

TEST_CASE("on a day of 25 hours the last hour belongs to it and to no other") {
  const test::Sample sample = test::sample_pour();  // its last event: 2026-03-03 at 14:00 UTC
  const Moment last = *parse_moment("2026-03-03T14:00:00.000Z");
  const LocalDay longer{last - std::chrono::hours{25} + std::chrono::minutes{10},
                        last + std::chrono::minutes{10}, std::chrono::minutes{120},
                        std::chrono::minutes{60}};
  const LocalDay next{longer.end, longer.end + std::chrono::hours{24}, std::chrono::minutes{60},
                      std::chrono::minutes{60}};
  CHECK(touches(sample.state, longer));
  CHECK_FALSE(touches(sample.state, next));
  const LocalDay last_hour{longer.start + std::chrono::hours{24}, longer.end, {}, {}};
  CHECK(touches(sample.state, last_hour));
  const DailyRecord record = make_daily_record({sample.input()}, longer, test::kBook);
  CHECK(Shown{record}.clock_words() ==
        "all told in UTC+02:00: the clocks were set to UTC+01:00 on this day");
}

TEST_CASE("a time of another day has its date before it, and the pour says that it goes over") {
  const test::Sample sample = test::sample_pour();
  const std::chrono::minutes offset{14 * 60};  // the pour begins at 23:30 and goes over midnight
  const Moment second = *parse_day("2026-03-03", offset);
  const DailyRecord record = make_daily_record({sample.input()}, second, offset, test::kBook);
  const Shown shown{record};
  const PourRecord& pour = record.pours.front();
  REQUIRE(pour.opened);
  CHECK(*pour.opened < record.day);
  CHECK(shown.when(*pour.opened) == "2026-03-02 23:30:00");
  CHECK(shown.when(second) == "00:00:00");
  CHECK(shown.when(second - std::chrono::seconds{1}) == "2026-03-02 23:59:59");
  CHECK(shown.when(record.day_end) == "2026-03-04 00:00:00");
  const std::string paper = read_pages(record);
  CHECK(times_in(paper, "Begun on an earlier day: 2026-03-02 23:30:00.") == 1);
  CHECK(times_in(paper, "a time with a date before") == 1);
}
