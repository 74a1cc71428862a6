#include "screens/entry/keyboard.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "screens/entry/paging.h"

namespace rb::screens {

namespace {

constexpr int kMostAcross = 7;
constexpr int kKeys = 28;
constexpr double kEdgeMm = 2.0;
constexpr std::array kFigures{"1",      "2",      "3",      "4",      "5",      "6", "7",
                              "8",      "9",      "0",      ".",      ",",      "-", "+",
                              "/",      ":",      "(",      ")",      "%",      "'", "\u00C1",
                              "\u00C9", "\u00CD", "\u00D3", "\u00DA", "\u00DC", "?", "ABC"};

using KeyRow = std::array<std::string, kKeys>;

KeyRow keys_of(const std::array<const char*, kKeys>& texts) {
  KeyRow keys;
  std::copy(texts.begin(), texts.end(), keys.begin());
  return keys;
}

// The alphabet with the language's own letters at their place (after N), and as many marks as then
// fit.
KeyRow letters_of(Language language) {
  std::vector<std::string> letters;
  for (char letter = 'A'; letter <= 'Z'; ++letter) {
    letters.emplace_back(1, letter);
    if (letter == 'N' && !language.letters().empty()) letters.emplace_back(language.letters());
  }
  letters.emplace_back(".");
  KeyRow keys;
  std::copy_n(letters.begin(), kKeys - 1, keys.begin());
  keys.back() = "123";
  return keys;
}

// Of a path, page after page.
constexpr std::array kSmall{"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m", "n",
                            "o", "p", "q", "r", "s", "t", "u", "v", "w", "x", "y", "z", "/", "ABC"};
constexpr std::array kCapital{"A", "B", "C", "D", "E", "F", "G", "H",  "I", "J",
                              "K", "L", "M", "N", "O", "P", "Q", "R",  "S", "T",
                              "U", "V", "W", "X", "Y", "Z", "/", "123"};
constexpr std::array kOfPath{"1", "2", "3", "4", "5", "6", "7", "8",  "9", "0",
                             ".", ",", "-", "_", "/", ":", "(", ")",  "%", "'",
                             "+", "&", "=", "!", "#", "@", "~", "abc"};
constexpr std::array kPathPages{&kSmall, &kCapital, &kOfPath};

}  // namespace

int keys_across(const Scale& scale, float width) {
  const float each = scale.target() + scale.gap();
  return std::clamp(static_cast<int>((width + scale.gap()) / each), 4, kMostAcross);
}

float keyboard_height(const Scale& scale, float panel_width) {
  const int across = keys_across(scale, panel_width - 2 * scale.mm(kEdgeMm));
  const int lines = (kKeys + across - 1) / across + 2;  // the text above, the space bar below
  return static_cast<float>(lines) * (scale.target() + scale.gap()) - scale.gap() +
         2 * scale.mm(kEdgeMm);
}

void erase_letter(std::string& text) {
  while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) {
    text.pop_back();
  }
  if (!text.empty()) text.pop_back();
}

void draw_keyboard(Stage& stage, const Box& box, std::string& text, const TextBound& bound,
                   Keys kind) {
  Canvas& canvas = stage.canvas;
  const float gap = canvas.gap();
  bool& figures = stage.drafts.figures;
  int& page = stage.drafts.path_keys;
  const KeyRow keys = kind == Keys::path ? keys_of(*kPathPages.at(static_cast<std::size_t>(page)))
                      : figures          ? keys_of(kFigures)
                                         : letters_of(stage.say.language);
  const int across = keys_across(canvas.scale(), box.w());
  const int lines = (kKeys + across - 1) / across + 1;
  std::string_view add;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    const Box key = box.line(static_cast<int>(i) / across, lines, gap)
                        .column(static_cast<int>(i) % across, across, gap);
    const std::string& letter = keys.at(i);
    const bool turn = i + 1 == keys.size();
    if (button(canvas, key,
               {.id = fmt::format("key {}", letter), .text = letter, .repeats = true})) {
      if (turn && kind == Keys::path) {
        page = (page + 1) % static_cast<int>(kPathPages.size());
      } else if (turn) {
        figures = !figures;
      } else {
        add = letter;
      }
    }
  }
  const Box foot = box.line(lines - 1, lines, gap);
  Box space = foot;
  const Box erase = space.cut_right(foot.column(0, 3, gap).w(), gap);
  if (button(canvas, space,
             {.id = "key space", .text = stage.say(Word::space_key), .repeats = true})) {
    add = " ";
  }
  if (button(canvas, erase,
             {.id = "key erase", .text = {}, .symbol = Symbol::erase, .repeats = true})) {
    erase_letter(text);
  }
  if (bound.takes(text, add)) text += add;
}

PanelEnd draw_text_entry(Stage& stage, const Box& box, const std::string& title, std::string& text,
                         const TextBound& bound, Keys keys) {
  Canvas& canvas = stage.canvas;
  const Say& say = stage.say;
  const float gap = canvas.gap();
  for (const std::string& letter : stage.typed) {
    if (letter == "\b") {
      erase_letter(text);
    } else if (bound.takes(text, letter)) {
      text += letter;
    }
  }
  panel(canvas, box);
  canvas.edge(box, canvas.theme().act.ground, canvas.mm(0.6), canvas.mm(1.6));
  Box in = box.inset(canvas.mm(kEdgeMm));
  // Writing over keeping: the text grows to the left of the two ways out.
  Box head = in.cut_top(canvas.scale().target(), gap);
  const float wide = std::max(canvas.scale().target(), canvas.mm(25));
  const Box keep = head.cut_right(wide, gap);
  const Box back = head.cut_right(wide, gap);
  const Pair ground = canvas.theme().quiet;
  canvas.fill(head, ground.ground, canvas.mm(1.6));
  canvas.edge(head, canvas.theme().ink, canvas.mm(0.4), canvas.mm(1.6));
  const Colour ink = text.empty() ? canvas.theme().ink_soft : ground.ink;
  canvas.text(text.empty() ? title : text + "_", head.inset(canvas.mm(1.6), 0),
              {.colours = {ground.ground, ink}, .lines = 2, .free_text = !text.empty()});
  PanelEnd end = PanelEnd::open;
  if (button(canvas, back, {.id = "back", .text = say(Word::cancel), .face = Face::small})) {
    end = PanelEnd::cancelled;
  }
  if (button(canvas, keep,
             {.id = "keep",
              .text = say(Word::keep),
              .look = Look::act,
              .face = Face::strong,
              .enabled = text.find_first_not_of(' ') != std::string::npos})) {
    end = PanelEnd::kept;
  }
  draw_keyboard(stage, in, text, bound, keys);
  return end;
}

}  // namespace rb::screens
