// The look: two themes, one for full sun and one for the night shift. Every pair of text and ground
// used by the widgets has a contrast of at least 7:1 (measured by a test); colour never says
// anything alone, a word and a shape always say it too.
#pragma once

#include <cstdint>

namespace rb::screens {

struct Colour {
  std::uint8_t r = 0, g = 0, b = 0;
  bool operator==(const Colour&) const = default;
};

constexpr Colour rgb(std::uint32_t hex) {
  return {static_cast<std::uint8_t>(hex >> 16U), static_cast<std::uint8_t>(hex >> 8U),
          static_cast<std::uint8_t>(hex)};
}

enum class ThemeName { sun, night };

/// A ground and the ink that may stand on it.
struct Pair {
  Colour ground, ink;
  bool operator==(const Pair&) const = default;
};

struct Theme {
  Colour page;        ///< behind everything
  Colour panel;       ///< what belongs together lies on one
  Colour ink;         ///< text on page and panel
  Colour ink_soft;    ///< second-rank text on page and panel, still 7:1
  Colour line;        ///< edges
  Pair quiet;         ///< a button that is there but not the next thing to do
  Pair act;           ///< the next thing to do
  Pair run;           ///< start a row
  Pair live;          ///< something runs: always hatched as well
  Pair stop;          ///< someone can be hurt
  Pair mend;          ///< the face will show it
  Pair well;          ///< enough, kept, done
  Pair off;           ///< cannot be used now
  Colour form;        ///< drawing: formwork
  Colour hard;        ///< drawing: concrete of earlier lifts
  Colour fresh;       ///< drawing: concrete of this lift
  Colour fresh_line;  ///< drawing: the lines it is ruled with, told from the stones of the hard
  Colour grain;       ///< drawing: stones in the concrete
  Colour void_fill;   ///< drawing: openings and what is not yet filled
  Colour mark;        ///< drawing: planned tops, dimension lines
};

const Theme& theme(ThemeName name);

}  // namespace rb::screens
