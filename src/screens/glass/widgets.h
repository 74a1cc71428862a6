// The few things screens are made of. Each draws itself and tells whether it was tapped.
#pragma once

#include <string>
#include <string_view>

#include "screens/glass/canvas.h"

namespace rb::screens {

enum class Look { quiet, act, run, live, stop, mend, well, off };
Pair pair_of(const Theme& theme, Look look);

struct ButtonSpec {
  std::string id{};        ///< stays the same whatever is written
  std::string text{};      ///< what it does, in capitals by habit of the words table
  std::string under = {};  ///< a second, smaller line
  std::string said{};      ///< words that belong to it but stand beside it: the row's name
  Look look = Look::quiet;
  Symbol symbol = Symbol::none;
  Face face = Face::strong;
  bool enabled = true;
  bool repeats = false;
  bool symbol_above = false;  ///< over the text instead of to its left
  bool free_text = false;
};

/// The ground of a card that is no button.
void card_ground(Canvas& canvas, const Box& box);

/// A big button: at least 15 mm each way is the caller's duty and a test's.
bool button(Canvas& canvas, const Box& box, const ButtonSpec& spec);

/// A plain ground for what belongs together.
void panel(Canvas& canvas, const Box& box);

/// A heading with a thin rule under it, cut from the top of `box`.
void heading(Canvas& canvas, Box& box, std::string_view text);

/// A label on its own ground with a symbol: a state said in word, shape and colour.
Box tag(Canvas& canvas, const Box& room, Symbol symbol, std::string_view text, Look look,
        Face face = Face::small, bool free_text = false);

/// The time a row ran against the band it should reach: a bar whose band is marked by two posts.
void band_bar(Canvas& canvas, const Box& box, double value, double low, double high, Look look);

/// A measured value against what is allowed: a bar with the limit marked by a post.
void gauge(Canvas& canvas, const Box& box, double value, double limit, Look look);

}  // namespace rb::screens
