#include "screens/words/words.h"

#include <doctest/doctest.h>
#include <imgui.h>

#include <set>

#include "check/check.h"
#include "screens/glass/fonts.h"
#include "screens/glass/scale.h"
#include "screens/view/event_words.h"

using namespace rb;
using namespace rb::screens;

namespace {

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
    const std::string english = word(Language{}, id);
    CAPTURE(english);
    for (const Language language : Language::all()) {
      CHECK(gaps(word(language, id)) == gaps(english));
      CHECK(std::string(word(language, id)).find("{:") == std::string::npos);
    }
  }
}

TEST_CASE("a finished language has every word of the screens") {
  for (const Language language : Language::all()) {
    if (!language.finished()) continue;
    for (const WordEntry& entry : word_table()) {
      CAPTURE(language.code());
      CAPTURE(entry.text);
      CHECK(has_words(language, entry.text, entry.context));
    }
  }
}

TEST_CASE("every letter of every word, figure and key has its glyph in every face") {
  ImFontAtlas atlas;
  const Fonts fonts = build_fonts(atlas, Scale(1280, 800));
  std::set<unsigned> missing;
  const auto look = [&](const std::string& text) {
    for (const unsigned code : letters(text)) {
      const bool figure = (code >= '0' && code <= ':') || code == '-';
      for (ImFont* font : fonts.faces) {
        if (font == fonts[Face::timer] && !figure) continue;  // it has no others
        if (font->FindGlyphNoFallback(static_cast<ImWchar>(code)) == nullptr) missing.insert(code);
      }
    }
  };
  for (const Language language : Language::all()) {
    for (std::size_t i = 0; i < kWords; ++i) look(word(language, static_cast<Word>(i)));
    look(std::string{language.own_name()} + std::string{language.letters()});
    for (const Units units : {Units::si, Units::us}) {
      const Say say{language, units, {}};
      look(say.height(metres(1.353)) + say.height(metres(-0.01)) + say.pressure(kilopascals(42)) +
           say.rise(metres_per_hour(1.8)) + say.temperature(celsius(-3)));
      for (int m = 0; m <= static_cast<int>(Measure::factor); ++m) {
        look(say.amount({static_cast<Measure>(m), 0.5}));
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

TEST_CASE(
    "what was chosen from a list reads in the reader's language, what was typed stands as typed") {
  const Say spanish{*Language::of_code("es"), Units::si, {}};
  const auto reads = [&](const Happening& what) { return event_words(spanish, what, {}); };
  CHECK(reads(event::Hold{"Pump stopped", event::Chosen::pump_stopped}) == "Pausa: Bomba parada");
  CHECK(reads(event::Hold{"Pump stopped"}) == "Pausa: Pump stopped");
  CHECK(reads(event::Note{"Mix looks dry", {}, {}, event::Chosen::mix_dry}).find("Mix") ==
        std::string::npos);
}
