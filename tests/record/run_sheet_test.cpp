// The run sheet on paper: what stands on its pages is asked of pdftotext (poppler-utils), a program
// of others.
#include "record/sheet/run_sheet_pdf.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <regex>
#include <set>
#include <sstream>

#include "temp_folder.h"

using namespace rb;

namespace {

// An invented mix, motor and form.
PlanWish element_of(Length length, Length height, Length thickness) {
  PlanWish w;
  w.element = ElementId{"E1"};
  w.length = length;
  w.height = height;
  w.thickness = thickness;
  w.form_rating = kilopascals(80);
  w.mix.id = MixId{"C1"};
  w.mix.unit_weight = kilonewtons_per_m3(24);
  w.mix.slump = millimetres(120);
  w.mix.initial_set = hours(6);
  w.motor = {amperes(4.2), kilonewtons(6), vibrations_per_minute(6000)};
  w.reach_x = w.reach_z = metres(0.7);
  w.inverter_amps = amperes(40);
  w.cable = Cable{quantity_of<Area>(4e-6), metres(25)};
  return w;
}

PlanWish pier() {
  PlanWish w = element_of(metres(0.6), metres(1.5), metres(0.6));
  w.kind = ElementKind::column;
  return w;
}

PlanWish core_wall() {
  PlanWish w = element_of(metres(9), metres(7), metres(0.5));
  w.both_sides = true;
  w.given.sides = true;
  return w;
}

PlannedPour planned(const PlanWish& wish) {
  auto plan = plan_pour(wish);
  REQUIRE_MESSAGE(plan, (plan ? std::string{} : to_text(plan.error())));
  plan->plan.site = "Quay 4";
  plan->plan.name = "Peñón, tower B";
  return *std::move(plan);
}

RunSheetManner manner(const char* language, Units units) {
  RunSheetManner made;
  made.voice.language = *Language::of_code(language);
  made.voice.units = units;
  made.start = std::chrono::minutes{5 * 60 + 30};
  return made;
}

std::string pdf_says(const std::string& pdf, const std::string& options) {
  const test::TempFolder folder;
  const auto file = folder.path() / "sheet.pdf";
  std::ofstream(file, std::ios::binary) << pdf;
  return test::output_of(fmt::format("pdftotext {} '{}' -", options, file.string()));
}

// Words of a text that pages and columns have broken, one blank between them.
std::string in_one_line(const std::string& text) {
  std::string line;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool no_break = text.compare(i, 2, "\u00A0") == 0;
    const bool blank = no_break || text[i] == ' ' || text[i] == '\n' || text[i] == '\f';
    if (no_break) ++i;
    if (!blank) {
      line += text[i];
    } else if (!line.empty() && line.back() != ' ') {
      line += ' ';
    }
  }
  return line;
}

// Every word of a text stands there, as often as the others do: columns beside it may come between.
bool words_in(const std::string& whole, const std::string& text) {
  std::istringstream words(in_one_line(text));
  for (std::string word; words >> word;) {
    if (whole.find(word) == std::string::npos) return false;
  }
  return true;
}

void check_sheet(const std::string& pdf, Paper paper, const std::string& page_of) {
  static const std::regex kPage{R"re(<page width="([\d.]+)" height="([\d.]+)">)re"};
  static const std::regex kWord{
      R"re(<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)</word>)re"};
  std::istringstream lines(pdf_says(pdf, "-bbox"));
  std::smatch found;
  int pages = 0;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_search(line, found, kPage)) {
      ++pages;
      CHECK(std::stod(found[1]) == doctest::Approx(paper.width).epsilon(0.001));
      CHECK(std::stod(found[2]) == doctest::Approx(paper.height).epsilon(0.001));
    } else if (std::regex_search(line, found, kWord)) {
      CAPTURE(found[5].str());
      // A printer's own margin is 5 mm, 14 points.
      CHECK(std::stod(found[1]) >= 14);
      CHECK(std::stod(found[2]) >= 14);
      CHECK(std::stod(found[3]) <= paper.width - 14);
      CHECK(std::stod(found[4]) <= paper.height - 14);
      CHECK(found[5].str().find("\u2026") == std::string::npos);  // nothing is cut
    }
  }
  const std::string all = in_one_line(pdf_says(pdf, "-layout"));
  for (int page = 1; page <= pages; ++page) {
    CHECK(all.find(fmt::format(fmt::runtime(page_of), page, pages)) != std::string::npos);
  }
}

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("a deck's sheet tells its bays, what is inserted where and when, and no rows") {
  PlanWish wish = element_of(metres(9), metres(6), millimetres(800));
  wish.kind = ElementKind::deck;
  wish.crew = 6;
  wish.beams = {{metres(2), metres(0.4), metres(0.5)}};
  const PlannedPour plan = planned(wish);
  for (const char* language : {"en", "es"}) {
    for (const Units units : {Units::si, Units::us}) {
      const RunSheet sheet = run_sheet(plan, wish, manner(language, units));
      CHECK(sheet.rows.rows.empty());
      std::size_t bays = 0;
      std::size_t inserts = 0;
      std::size_t holds = 0;
      for (const SheetLine& line : sheet.lines) {
        if (line.kind == RunStepKind::bay) ++bays;
        if (line.kind == RunStepKind::insert) ++inserts;
        if (line.hold) ++holds;
        CHECK(line.says.find('{') == std::string::npos);
      }
      CHECK(bays == 6);  // three bays of two layers
      CHECK(inserts == 6);
      CHECK(holds == 2);  // the first load's test; the layer below, worked before it sets
      const Paper paper = units == Units::us ? kLetter : kA4;
      const auto pdf = to_pdf(sheet, paper);
      REQUIRE(pdf);
      check_sheet(*pdf, paper, sheet.page_of);
      const std::string says = in_one_line(pdf_says(*pdf, "-layout"));
      for (const SheetLine& line : sheet.lines) CHECK(words_in(says, line.says));
      CHECK(says.find(in_one_line(sheet.rows_title)) == std::string::npos);
    }
  }
}

TEST_CASE("every step and hold point of a pier and of a core wall is on the paper, whole") {
  for (const PlanWish& wish : {pier(), core_wall()}) {
    const PlannedPour plan = planned(wish);
    for (const char* language : {"en", "es"}) {
      for (const Units units : {Units::si, Units::us}) {
        for (const Paper paper : {kA4, kLetter}) {
          CAPTURE(language);
          CAPTURE(paper.width);
          CAPTURE(plan.lifts.size());
          const RunSheet sheet = run_sheet(plan, wish, manner(language, units));
          const auto pdf = to_pdf(sheet, paper);
          REQUIRE(pdf);
          check_sheet(*pdf, paper, sheet.page_of);
          const std::string text = in_one_line(pdf_says(*pdf, ""));
          CHECK(text.find("\uFFFD") == std::string::npos);
          CHECK(words_in(text, sheet.title));
          for (const auto& [name, value] : sheet.facts) CHECK(words_in(text, name + " " + value));
          for (const SheetLine& line : sheet.lines) {
            CAPTURE(line.says);
            CHECK(words_in(text, line.clock));
            // In a column of its own, whose lines follow each other.
            CHECK(text.find(in_one_line(line.says).substr(0, 24)) != std::string::npos);
            CHECK(words_in(text, line.says));
          }
          for (const std::string& hold : sheet.before) CHECK(words_in(text, hold));
          for (const std::string& caution : sheet.cautions) CHECK(words_in(text, caution));
          const char* hold = std::string{language} == "es" ? "ALTO:" : "HOLD:";
          const auto holds = static_cast<std::size_t>(
              std::count_if(sheet.lines.begin(), sheet.lines.end(),
                            [](const SheetLine& line) { return line.hold; }));
          // The test; of each lift its top, and the joint under it; and where a lift is the first
          // to need motors, that they hang.
          std::set<std::size_t> ran;
          std::size_t anew = 0;
          for (const LiftStep& lift : plan.lifts) {
            const std::size_t before = ran.size();
            ran.insert(lift.rows.begin(), lift.rows.end());
            if (ran.size() > before) ++anew;
          }
          CHECK(holds == 1 + plan.lifts.size() + (plan.lifts.size() - 1) + anew);
          CHECK(times(text, hold) == holds);
        }
      }
    }
  }
}

TEST_CASE("a sheet's clock runs from the start it is given") {
  const PlanWish wish = core_wall();
  const PlannedPour plan = planned(wish);
  RunSheetManner made = manner("en", Units::si);
  made.start = std::chrono::minutes{23 * 60 + 55};
  const RunSheet sheet = run_sheet(plan, wish, made);
  const auto lift = [&](std::size_t number) {
    std::vector<std::string> clocks;
    for (const SheetLine& line : sheet.lines) {
      if (line.kind == RunStepKind::lift) clocks.push_back(line.clock);
    }
    return clocks.at(number);
  };
  CHECK(lift(0) == "23:55");
  CHECK(lift(1).find("(+1)") != std::string::npos);
  made.start.reset();
  const RunSheet from_zero = run_sheet(plan, wish, made);
  CHECK(from_zero.lines.front().clock.front() != '2');
  CHECK(from_zero.loads.rows.front().at(2) == "0:00");
}

TEST_CASE("a time of day is two figures, a colon and two figures") {
  CHECK(read_day_time("05:30") == std::chrono::minutes{330});
  CHECK(read_day_time("23:59") == std::chrono::minutes{1439});
  for (const char* wrong : {"", "5:30", "24:00", "05:60", "05.30", "05:3a", "05:300"}) {
    CHECK_FALSE(read_day_time(wrong));
  }
}

TEST_CASE("a sheet tells lengths on the tape that is used") {
  const PlanWish wish = pier();
  const PlannedPour plan = planned(wish);
  const auto size = [&](Units units) {
    return run_sheet(plan, wish, manner("en", units)).facts.front().second;
  };
  CHECK(size(Units::si).find("0.60\u00A0m") != std::string::npos);
  CHECK(size(Units::us).find("1\u2032 11\u00BD\u2033") != std::string::npos);
}
