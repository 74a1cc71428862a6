#include "screens/words.h"

#include <doctest/doctest.h>
#include <imgui.h>

#include <set>

#include "check/check.h"
#include "screens/event_words.h"
#include "screens/fonts.h"
#include "screens/scale.h"

using namespace rb;
using namespace rb::screens;

namespace {

constexpr Language kLanguages[] = {Language::english, Language::spanish};

std::size_t gaps(const std::string& text) {
  std::size_t count = 0;
  for (std::size_t at = text.find("{}"); at != std::string::npos; at = text.find("{}", at + 1)) {
    ++count;
  }
  return count;
}

std::vector<unsigned> letters(const std::string& text) {
  std::vector<unsigned> codes;
  const char* at = text.data();
  const char* end = at + text.size();
  while (at < end) {
    const auto lead = static_cast<unsigned char>(*at);
    const int more = lead < 0x80 ? 0 : lead < 0xE0 ? 1 : lead < 0xF0 ? 2 : 3;
    unsigned code = more == 0 ? lead : lead & (0x3FU >> static_cast<unsigned>(more));
    for (int i = 1; i <= more; ++i) {
      code = code << 6U | (static_cast<unsigned char>(at[i]) & 0x3FU);
    }
    codes.push_back(code);
    at += more + 1;
  }
  return codes;
}

}  // namespace

TEST_CASE("a word leaves the same gaps in every language") {
  for (std::size_t i = 0; i < kWords; ++i) {
    const auto id = static_cast<Word>(i);
    CAPTURE(word(Language::english, id));
    CHECK(gaps(word(Language::english, id)) == gaps(word(Language::spanish, id)));
    CHECK(std::string(word(Language::spanish, id)).find("{:") == std::string::npos);
  }
}

TEST_CASE("every letter of every word, figure and key has its glyph in every face") {
  ImFontAtlas atlas;
  const Fonts fonts = build_fonts(atlas, Scale(1280, 800));
  std::set<unsigned> missing;
  const auto look = [&](const std::string& text) {
    for (const unsigned code : letters(text)) {
      for (ImFont* font : fonts.faces) {
        if (font->FindGlyphNoFallback(static_cast<ImWchar>(code)) == nullptr) missing.insert(code);
      }
    }
  };
  for (const Language language : kLanguages) {
    for (const WordEntry& entry : table_of(language)) look(entry.text);
    for (const Units units : {Units::si, Units::us}) {
      const Say say{language, units, {}};
      look(say.height(metres(1.353)) + say.height(metres(-0.01)) + say.pressure(kilopascals(42)) +
           say.rise(metres_per_hour(1.8)) + say.temperature(celsius(-3)));
      for (const char* unit : {"s", "kPa", "m/h", "m", "m3", "1", "degC", "kN", "V", "A", ""}) {
        look(say.figure(0.5, unit));
      }
    }
  }
  look(
      "\u00B7 \u2026 _ \u2033 \u2032 \u00BD \u00D1\u00C1\u00C9\u00CD\u00D3\u00DA\u00DC\u00F1 "
      "?%'()/:,.+-");
  for (const unsigned code : missing) CAPTURE(code);
  CHECK(missing.empty());
}

TEST_CASE("a glyph that is missing is noticed") {
  ImFontAtlas atlas;
  const Fonts fonts = build_fonts(atlas, Scale(1280, 800));
  CHECK(fonts[Face::body]->FindGlyphNoFallback(0x4E00) == nullptr);
}

TEST_CASE("every rule of the checker has words of its own in every language") {
  for (const RuleCard& card : rule_cards()) {
    CAPTURE(card.id);
    for (const Language language : kLanguages) {
      const Say say{language, Units::si, {}};
      CHECK(rule_title(say, card.id) != card.id);
      Finding finding;
      finding.rule = card.id;
      finding.advice = "the checker's own";
      CHECK(rule_advice(say, finding) != finding.advice);
    }
  }
}
