// Every rule of the list: found in a pour spoilt for it, with nothing else that does not follow
// from it, and absent from the pour before it was spoilt. And what cards and findings say.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <optional>
#include <regex>
#include <set>
#include <tuple>

#include "../pour_text.h"
#include "spoilt.h"

using namespace rb;
using namespace rb::test;

namespace {

bool has_word(std::string text, const std::string& word) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  const auto letter = [&](std::size_t i) {
    return i < text.size() && std::isalpha(static_cast<unsigned char>(text[i])) != 0;
  };
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    if ((at == 0 || !letter(at - 1)) && !letter(at + word.size())) return true;
  }
  return false;
}

}  // namespace

TEST_CASE(
    "every rule of the list is found in a pour spoilt for it, and only what follows from it") {
  for (const Spoilt& s : spoilt()) {
    const Checked seen = s.seen();
    CAPTURE(s.rule);
    INFO(to_text(seen.state, seen.report));
    std::set<std::string> expected = s.besides;
    expected.insert(s.rule);
    const auto found = seen.rules();
    CHECK(std::set<std::string>(found.begin(), found.end()) == expected);
  }
}

TEST_CASE("the pours spoilt are one for each rule of the list") {
  std::set<std::string> tested, listed;
  for (const Spoilt& s : spoilt()) tested.insert(s.rule);
  for (const RuleCard& card : rule_cards()) listed.insert(card.id);
  CHECK(tested == listed);
  CHECK(rule_cards().size() == listed.size());
  // The design's list.
  CHECK(listed ==
        std::set<std::string>{
            "dose-low",       "dose-high",   "run-short",      "run-long",      "row-missed",
            "row-empty",      "head-high",   "rise-fast",      "lift-deep",     "knit-late",
            "top-fell",       "load-old",    "temp-out",       "volume-off",    "power-over",
            "volts-low",      "speed-out",   "cable-open",     "row-far",       "insert-missing",
            "insert-sparse",  "clock-step",  "run-unended",    "ready-open",    "unsigned",
            "entered-before", "kept-late",   "from-script",    "load-untested", "slump-out",
            "unvibrated",     "knit-near",   "form-moved",     "water-added",   "form-short",
            "insert-few",     "air-out",     "density-out",    "front-unknown", "gate-passed",
            "joint-old",      "trip-open",   "generator-over", "strip-early",   "heads-few",
            "face-low",       "insert-long", "cure-late",      "cure-short",    "evaporation",
            "specimen-low",   "strip-leave", "cure-temp"});
}

TEST_CASE(
    "every card says what it guards, its limit, where that comes from, who changes it and what to "
    "do") {
  for (const RuleCard& card : rule_cards()) {
    CAPTURE(card.id);
    for (const char* text : {card.guards, card.source, card.limit, card.changed_by, card.advice}) {
      REQUIRE(text != nullptr);
      CHECK_FALSE(std::string{text}.empty());
      CHECK_FALSE(has_word(text, "safe"));
    }
  }
}

TEST_CASE(
    "every finding says what, where its limit comes from and what to do, and never \"safe\"") {
  for (const Spoilt& s : spoilt()) {
    const Checked seen = s.seen();
    for (const Finding& f : seen.report.findings) {
      CAPTURE(f.rule);
      CHECK_FALSE(seen.says(f).empty());
      CHECK(seen.says(f).find('{') == std::string::npos);
      CHECK_FALSE(source_text(f.source, kTerminal).empty());
      CHECK_FALSE(std::string{f.advice}.empty());
      CHECK((f.limit.has_value() || !f.measured || f.rule == "run-unended"));
      CHECK((!f.limit || !f.measured || f.limit->measure == f.measured->measure));
      const auto card = std::find_if(rule_cards().begin(), rule_cards().end(),
                                     [&](const RuleCard& c) { return f.rule == c.id; });
      REQUIRE(card != rule_cards().end());
      CHECK(f.severity == card->severity);
      CHECK(std::string{f.advice} == card->advice);
      for (const std::string& text :
           {seen.says(f), source_text(f.source, kTerminal), std::string{f.advice}}) {
        CHECK_FALSE(has_word(text, "safe"));
      }
    }
    CHECK_FALSE(has_word(to_text(seen.state, seen.report), "safe"));
    CHECK_FALSE(has_word(to_json(seen.state, seen.report), "safe"));
  }
}

// All that is told of a finding.
std::vector<std::string> told_of(const Finding& f, const Plan& plan, const Voice& voice) {
  return {sentence(f, plan, voice), source_text(f.source, voice), advice_text(f, voice),
          measured_text(f, voice), limit_text(f, voice)};
}

TEST_CASE("all that is told of a finding is in the reader's language and units") {
  // A figure and a unit of the metric system that has another in US customary units.
  const std::regex metric{
      "[0-9](\u00A0| )(mm?|kPa|m/h|m\u00B3|\u00B0C|k[Ng]/m\u00B3|kN)(?![A-Za-z0-9/])"};
  for (const Spoilt& s : spoilt()) {
    const Checked seen = s.seen();
    for (const Finding& f : seen.report.findings) {
      CAPTURE(f.rule);
      const auto english = told_of(f, *seen.state.plan, Voice{});
      for (const Language language : Language::all()) {
        for (const Units units : {Units::si, Units::us}) {
          const auto told = told_of(f, *seen.state.plan, Voice{language, units});
          for (std::size_t i = 0; i < told.size(); ++i) {
            CAPTURE(told[i]);
            CHECK(told[i].find_first_of("{}") == std::string::npos);
            if (units == Units::us) CHECK_FALSE(std::regex_search(told[i], metric));
            // Sentence, source and advice are words; the figures are the same in any language.
            if (units == Units::si && i < 3 && language != Language{} && told[i] != "plan")
              CHECK(told[i] != english[i]);
          }
        }
      }
    }
  }
}

TEST_CASE("a name that looks like a figure stays as it was written") {
  const std::string item = "50 mm hose";
  const TicketId ticket{"12 psi"};
  std::size_t named = 0;
  for (const Spoilt& s : spoilt()) {
    const Checked seen = s.seen();
    Plan plan = *seen.state.plan;
    for (Element& element : plan.elements) element.id = ElementId{"Wall 3 m"};
    for (Finding f : seen.report.findings) {
      if (f.ticket) f.ticket = ticket;
      for (Fact& fact : f.facts) {
        if (fact.name == "item") fact.value = item;
      }
      const auto names = names_in(f.sentence);
      const auto has = [&](const char* name) {
        return std::find(names.begin(), names.end(), name) != names.end();
      };
      for (const Language language : Language::all()) {
        const std::string text = sentence(f, plan, Voice{language, Units::us});
        CAPTURE(text);
        if (has("element")) CHECK(text.find("Wall 3 m") != std::string::npos);
        if (has("ticket")) CHECK(text.find(ticket.text) != std::string::npos);
        if (has("item")) CHECK(text.find(item) != std::string::npos);
        named += static_cast<std::size_t>(has("element")) +
                 static_cast<std::size_t>(has("ticket")) + static_cast<std::size_t>(has("item"));
      }
    }
  }
  CHECK(named > 30);
}

TEST_CASE("a translated sentence tells the same facts") {
  for (const Spoilt& s : spoilt()) {
    const Checked seen = s.seen();
    for (const Finding& f : seen.report.findings) {
      auto english = names_in(f.sentence);
      std::sort(english.begin(), english.end());
      for (const Language language : Language::all()) {
        auto names = names_in(told(language, f.sentence));
        std::sort(names.begin(), names.end());
        CAPTURE(f.sentence);
        CHECK(names == english);
      }
    }
  }
}

TEST_CASE("a report with only notes is clean, one with more is not") {
  for (const Spoilt& s : spoilt()) {
    const Checked seen = s.seen();
    const bool grave = std::any_of(seen.report.findings.begin(), seen.report.findings.end(),
                                   [](const Finding& f) { return f.severity != Severity::note; });
    CAPTURE(s.rule);
    CHECK(seen.report.clean() == !grave);
  }
}

TEST_CASE("findings stand cause by cause, the gravest first, then the earliest") {
  Pour pour = good_pour();
  for (const Spoilt& s : spoilt()) {
    if (s.rule != "rise-fast" && s.rule != "insert-missing") s.spoil(pour);
    if (s.rule == "run-short") break;  // its rows are taken away next
  }
  pour.ran("R3", 100, 110).without("inspector");
  const Checked seen = pour.checked();
  REQUIRE(seen.report.findings.size() > 5);
  const auto causes = by_cause(seen.report.findings);
  REQUIRE(causes.size() > 3);
  const auto weight = [](const Finding& f) {
    const RuleCard* card = find_card(f.rule);
    return std::tuple{f.severity, -static_cast<int>(card->harm), card->cost};
  };
  std::set<std::string> told;
  for (std::size_t i = 0; i < causes.size(); ++i) {
    CHECK(told.insert(causes[i].front().group).second);  // a cause stands in one place
    for (const Finding& f : causes[i]) {
      CHECK(f.group == causes[i].front().group);
      CHECK(weight(causes[i].front()) <= weight(f));
    }
    if (i == 0) continue;
    const auto place = [&](const Finding& f) {
      return std::pair{weight(f), f.from.value_or(Seconds{-1e12})};
    };
    CHECK(place(causes[i - 1].front()) <= place(causes[i].front()));
  }
}
