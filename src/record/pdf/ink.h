// Drawing on cairo with pango text: the look of the record in one place. Points, y downwards.
#pragma once

#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>
#include <string>
#include <string_view>

namespace rb {

struct Colour {
  double r, g, b;
};

namespace look {
inline constexpr Colour slate{0.129, 0.180, 0.227};  ///< headings, text
inline constexpr Colour steel{0.353, 0.420, 0.475};  ///< what is less important
inline constexpr Colour hair{0.776, 0.808, 0.831};   ///< hairlines
inline constexpr Colour mist{0.937, 0.949, 0.957};   ///< a quiet ground
inline constexpr Colour clay{0.706, 0.314, 0.075};   ///< the one warm accent
inline constexpr Colour red{0.745, 0.086, 0.106};    ///< damage, and nothing else
inline constexpr Colour white{1, 1, 1};
}  // namespace look

enum class Align { left, centre, right };

struct Style {
  double size = 8.5;
  bool bold = false;
  Colour colour = look::slate;
  Align align = Align::left;
};

using LayoutHandle = std::unique_ptr<PangoLayout, decltype(&g_object_unref)>;

/// Pen and type on one surface. Does not own the cairo context.
class Ink {
 public:
  explicit Ink(cairo_t* cr);

  /// Text laid out in `width` points (wrapped there), or on one line when width is below 0.
  [[nodiscard]] LayoutHandle lay(std::string_view text, const Style& style,
                                 double width = -1) const;
  /// Its height when drawn.
  [[nodiscard]] static double height(const LayoutHandle& layout);
  [[nodiscard]] static double width(const LayoutHandle& layout);

  /// Draws one line of text with its top at y; x is its left, middle or right by the alignment.
  void text(double x, double y, std::string_view text, const Style& style) const;
  /// Draws one line, cut with an ellipsis where it is wider than `width`.
  void fitted(double x, double y, double width, std::string_view text, const Style& style) const;
  void box(double x, double y, double w, double h, Colour fill) const;
  void frame(double x, double y, double w, double h, Colour colour, double width = 0.6) const;
  void line(double x1, double y1, double x2, double y2, Colour colour, double width = 0.6) const;
  void colour(Colour c) const { cairo_set_source_rgb(cr_, c.r, c.g, c.b); }

  [[nodiscard]] cairo_t* cr() const { return cr_; }

 private:
  cairo_t* cr_;
  std::shared_ptr<PangoContext> context_;
};

/// Closes a surface's memory at the end of a scope.
using SurfaceHandle = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using PenHandle = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

/// A cairo write function: appends to the std::string that is its closure.
cairo_status_t keep_bytes(void* text, const unsigned char* data, unsigned int length);

}  // namespace rb
