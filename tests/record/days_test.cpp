// Days as they come: over midnight, of 23 and 25 hours, of several pours.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "check/check.h"
#include "pour/log/fold.h"
#include "pour/log/log_entry.h"
#include "pour/log/script.h"
#include "pour/outlook/form.h"
#include "record/form/archive_pdf.h"
#include "record/form/html.h"
#include "record/told/shown.h"
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

TEST_CASE("a pour of two elements with two faces: each told whole and once") {
  const std::string open =
      R"({"at":"2026-03-02T05:00:00Z","by":"f","do":"pour-open","pour":"P2","plan":{"site":"S","name":"Two walls",)"
      R"("people":[{"id":"f","name":"F","role":"foreman"}],"mixes":[{"id":"C","unit_weight":24,"slump":0.1,"initial_set_h":5}],)"
      R"("elements":[@A,@B]}})";
  const std::string wall =
      R"({"id":"@","length":4,"height":2,"thickness":0.4,"form_rating_kpa":60,"lifts":[1,2],"rows":[)"
      R"({"id":"N1","side":"near","z":0.5,"motors":[{"id":"@a","x":1,"reach_x":1,"reach_z":0.6}]},)"
      R"({"id":"F1","side":"far","z":0.5,"motors":[{"id":"@b","x":1,"reach_x":1,"reach_z":0.6}]}]})";
  std::string script = open;
  for (const char* name : {"A", "B"}) {
    std::string one = wall;
    for (auto at = one.find('@'); at != std::string::npos; at = one.find('@')) {
      one.replace(at, 1, name);
    }
    script.replace(script.find(std::string{"@"} + name), 2, one);
  }
  script += "\n";
  int minute = 10;
  for (const char* name : {"A", "B"}) {
    for (int lift = 1; lift <= 2; ++lift) {
      const auto line = [&](const std::string& what) {
        script += fmt::format(R"({{"at":"2026-03-02T05:{:02}:00Z","by":"f","element":"{}",{}}})",
                              minute++, name, what) +
                  "\n";
      };
      line(fmt::format(R"("do":"lift-start","lift":{})", lift));
      line(fmt::format(R"("do":"lift-end","lift":{0},"height":{0})", lift));
      for (const char* row : {"N1", "F1"}) {
        line(
            fmt::format(R"("do":"run","row":"{}","side":"{}")", row, *row == 'N' ? "near" : "far"));
        line(fmt::format(R"("do":"rest","row":"{}","side":"{}")", row,
                         *row == 'N' ? "near" : "far"));
      }
    }
  }
  const auto read = read_script(script, "two walls");
  REQUIRE_MESSAGE(read, (read ? "" : to_text(read.error())));
  const PourState state = *fold(read->events);
  const CheckReport report = check(state, AsOf::end(state));
  std::vector<SideDose> faces;
  for (std::size_t e = 0; e < 2; ++e) {
    for (const Side side : judged_sides(state.plan->elements[e])) {
      faces.push_back(side_dose(e, side, trade::dose_field(face_of(state, e, {side}))));
    }
  }
  REQUIRE(faces.size() == 4);
  const DailyRecord record = make_daily_record({RecordInput{state, report, faces, {}, true}},
                                               *parse_day("2026-03-02"), {}, test::kBook);
  const PourRecord& pour = record.pours.front();
  CHECK(pour.lifts.size() == 4);
  CHECK(pour.joints.size() == 2);
  CHECK(pour.runs.size() == 8);
  CHECK(pour.tops.size() == 4);
  const std::string paper = read_pages(record);
  const std::string page = to_html(record);
  for (const std::string title : {"Dose on A, near side", "Dose on A, far side",
                                  "Dose on B, near side", "Dose on B, far side"}) {
    CAPTURE(title);
    CHECK(times_in(paper, title) == 1);
    CHECK(times_in(page, "<h3>" + title) == 1);
  }
  CHECK(times_in(page, "<figure class=\"face\"") == 4);
  CHECK(times_in(page, "application/json") == 4);
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
  CHECK(times_in(to_html(record), "<p>Begun on an earlier day: 2026-03-02 23:30:00.</p>") == 1);
}
