#include "record/form/html.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "sample.h"

using namespace rb;

namespace {

DailyRecord page_record(const char* units = "si", Language language = {}) {
  test::Sample sample = test::sample_pour(units);
  RecordInput input{sample.state, sample.report, sample.dose, {}, true};
  return make_daily_record({input}, *parse_day("2026-03-02", test::kOffset), test::kOffset,
                           test::kBook, {}, language);
}

bool on_page(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

nlohmann::json stories_in(const std::string& page) {
  const std::string begin = "<script type=\"application/json\">";
  const auto at = page.find(begin);
  REQUIRE(at != std::string::npos);
  const auto end = page.find("</script>", at);
  return nlohmann::json::parse(page.substr(at + begin.size(), end - at - begin.size()));
}

// The story of the square a place lies in, line by line.
std::vector<std::string> story_at(const nlohmann::json& data, double x, double z) {
  const auto across = static_cast<std::size_t>(x * data["across"].get<double>());
  const auto up = static_cast<std::size_t>(z * data["up"].get<double>());
  std::vector<std::string> lines;
  for (const auto& line :
       data["stories"]
           [data["at"][up * data["across"].get<std::size_t>() + across].get<std::size_t>()]) {
    const auto& told = data["lines"][line.get<std::size_t>()];
    lines.push_back(told[0].get<std::string>() + ": " + told[1].get<std::string>());
  }
  return lines;
}

}  // namespace

TEST_CASE("the page stands alone: nothing in it is fetched from elsewhere") {
  const std::string page = to_html(page_record());
  for (const std::string part : {"http:", "https:", " src=", "<link", "@import", "url(http"}) {
    CAPTURE(part);
    CHECK_FALSE(on_page(page, part));
  }
  CHECK(on_page(page, "<!DOCTYPE html>"));
  CHECK(on_page(page, "<html lang=\"en\">"));
  CHECK(on_page(page, "Peñón Court"));
  CHECK(on_page(page, "local, UTC-05:00"));
  CHECK(page == to_html(page_record()));
}

TEST_CASE("each element of the page is closed where it was opened") {
  const std::string page = to_html(page_record());
  static const std::regex kTag{"<(/?)([a-z0-9]+)([^>]*)>"};
  std::vector<std::string> open;
  const auto script = page.rfind("<script>");
  for (std::sregex_iterator it(page.begin(), page.begin() + static_cast<long>(script), kTag), end;
       it != end; ++it) {
    const std::string name = (*it)[2];
    const std::string more = (*it)[3];
    if (name == "meta" || (!more.empty() && more.back() == '/')) continue;
    if ((*it)[1] == "") {
      open.push_back(name);
    } else {
      REQUIRE_FALSE(open.empty());
      REQUIRE(open.back() == name);
      open.pop_back();
    }
  }
  CHECK(open == std::vector<std::string>{"html", "body"});
}

TEST_CASE("a spot's story tells its ticket, its runs, its dose and what covered it") {
  const auto data = stories_in(to_html(page_record()));
  std::string all;
  for (const std::string& line : story_at(data, 0.09, 0.13)) all += line + "\n";
  CAPTURE(all);
  for (const std::string part :
       {"Place: bay 1", "with lift 1", "Ticket: 48120", "slump 150", "Vibrated: R1: 05:45:10 to ",
        "Dose: 95", "at least 90", "Head: ", "Initial set: ", "Covered: "}) {
    CAPTURE(part);
    CHECK(on_page(all, part));
  }
  std::string opening;
  for (const std::string& line : story_at(data, 4.6 / 12, 1.8 / 4.2)) opening += line;
  CHECK(on_page(opening, "none came here"));
  std::string blemish;
  for (const std::string& line : story_at(data, 6.4 / 12, 2.7 / 4.2)) blemish += line;
  CHECK(on_page(blemish, "Blemish: 1: honeycomb, behind the form tie"));
}

TEST_CASE("the page is in the reader's language and the plan's units") {
  const std::string page = to_html(page_record("us", *Language::of_code("es")));
  for (const std::string part :
       {"<html lang=\"es\">", "Registro diario de consolidación", "lunes 2 de marzo de 2026",
        "Hallazgos", "ft/h", "de la izquierda", "Lo que pasó, según el reloj", "capa 2"}) {
    CAPTURE(part);
    CHECK(on_page(page, part));
  }
  CHECK_FALSE(on_page(page, "kPa"));
}

TEST_CASE("what a user typed cannot become a part of the page") {
  test::Sample sample =
      test::sample_pour("si", 0, R"("</script><script>alert(1)</script><img onerror=x> & \"q\"")");
  DailyRecord record =
      make_daily_record({RecordInput{sample.state, sample.report, sample.dose, {}, true}},
                        *parse_day("2026-03-02", test::kOffset), test::kOffset, test::kBook);
  record.site = "<b>site</b>";
  record.pours[0].dose_maps[0].stories.lines[0].second = "</script><script>alert(2)";
  const std::string page = to_html(record);
  CHECK_FALSE(on_page(page, "<script>alert"));
  CHECK_FALSE(on_page(page, "<img"));
  CHECK_FALSE(on_page(page, "<b>"));
  CHECK(on_page(page, "&lt;b&gt;site&lt;/b&gt;"));
}
