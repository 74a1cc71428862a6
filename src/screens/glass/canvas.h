// What a screen draws on and asks for taps: shapes, text that is measured before it is drawn, and
// targets. One canvas lives for one frame. It keeps no state of its own.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "screens/glass/fonts.h"
#include "screens/glass/geometry.h"
#include "screens/glass/probe.h"
#include "screens/glass/scale.h"
#include "screens/glass/tap.h"
#include "screens/glass/theme.h"

struct ImDrawList;

namespace rb::screens {

enum class Across { left, middle, right };
enum class Down { top, middle, bottom };

struct TextStyle {
  Face face = Face::body;
  Pair colours{};
  Across across = Across::left;
  Down down = Down::middle;
  int lines = 1;           ///< at most this many, broken at spaces
  bool free_text = false;  ///< a user wrote it: an ellipsis is no fault
};

/// Symbols drawn as shapes, so that none depends on a glyph.
enum class Symbol {
  none,
  run,
  rest,
  rise,
  level,
  check,
  cross,
  pencil,
  back,
  forward,
  up,
  down,
  more,
  hold,
  note,
  stop_sign,
  mend_sign,
  note_sign,
  erase,
  clock,
  cable,
  plus,
  minus,
  sun,
  moon,
  list
};

class Canvas {
 public:
  Canvas(ImDrawList& list, const Fonts& fonts, const Theme& theme, const Scale& scale, Probe& probe,
         const std::optional<Tap>& tap, std::string pressed, int second);

  [[nodiscard]] const Theme& theme() const { return theme_; }
  [[nodiscard]] const Scale& scale() const { return scale_; }
  [[nodiscard]] float mm(double millimetres) const { return scale_.mm(millimetres); }
  [[nodiscard]] float gap() const { return scale_.gap(); }
  [[nodiscard]] Pair on_page() const { return {theme_.page, theme_.ink}; }
  [[nodiscard]] Pair on_panel() const { return {theme_.panel, theme_.ink}; }
  [[nodiscard]] Pair soft() const { return {theme_.panel, theme_.ink_soft}; }
  /// Counts the seconds of the wall clock: what moves, moves once a second.
  [[nodiscard]] int second() const { return second_; }

  void fill(const Box& box, Colour colour, float radius = 0);
  void edge(const Box& box, Colour colour, float thickness, float radius = 0);
  void line(Point from, Point to, Colour colour, float thickness);
  void dashes(Point from, Point to, Colour colour, float thickness, float dash);
  /// Slanted stripes, shifted a step by every second: the sign of what runs.
  void hatch(const Box& box, Colour stripe, float pitch, bool moving);
  void dot(Point middle, float radius, Colour colour);
  void triangle(Point a, Point b, Point c, Colour colour);
  void symbol(Symbol symbol, const Box& box, Colour colour);
  void clip(const Box& box);
  void unclip();

  [[nodiscard]] float width(std::string_view text, Face face) const;
  [[nodiscard]] float height(Face face) const;
  /// Writes text into a room: smaller faces are tried before it is cut. Returns the room it took.
  Box text(std::string_view text, const Box& room, const TextStyle& style);

  /// Declares a target; true when it was tapped. The caller draws what it looks like.
  bool target(const std::string& id, const Box& box, std::string_view text, bool enabled = true,
              bool repeats = false);
  /// A target that a finger draws on: a tap tells where it came down and where it was let go of.
  bool drag_target(const std::string& id, const Box& box, std::string_view text,
                   bool enabled = true);
  /// The finger that is drawing now, as this frame shows it.
  void on_drag(std::optional<Drag> drag) { drag_ = std::move(drag); }
  [[nodiscard]] const std::optional<Drag>& drag() const { return drag_; }
  /// Where the finger is that went down on this target, which drags; none: it is not on this one.
  [[nodiscard]] std::optional<Point> dragged(const std::string& id) const {
    return drag_ && drag_->id == id ? std::optional{drag_->to} : std::nullopt;
  }
  /// The panel that targets declared from now on stand on (scope.h); what was set before.
  std::uint64_t on_scope(std::uint64_t scope) { return std::exchange(on_, scope); }
  [[nodiscard]] bool pressed(const std::string& id) const { return id == pressed_; }
  /// The tap this frame answers, if any: its moment is when it happened.
  [[nodiscard]] const std::optional<Tap>& tap() const { return tap_; }

 private:
  ImDrawList& list_;
  const Fonts& fonts_;
  const Theme& theme_;
  const Scale& scale_;
  Probe& probe_;
  const std::optional<Tap>& tap_;
  std::string pressed_{};
  std::optional<Drag> drag_{};
  std::uint64_t on_ = 0;
  int second_;
};

}  // namespace rb::screens
