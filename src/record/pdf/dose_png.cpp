#include <cmath>

#include "record/model/clean_text.h"
#include "record/pdf/dose_drawing.h"

namespace rb {

std::string dose_map_png(const DoseMap& map, const Voice& voice, int width,
                         const std::string& under) {
  constexpr double kWide = 560;  // points the picture is laid out in
  constexpr double kMost = 420;
  constexpr double kMargin = 14;
  constexpr double kTitle = 24;
  constexpr double kUnder = 24;  // two small lines
  const double foot = under.empty() ? 0 : kUnder;
  const double drawing = dose_drawing_height(map, kWide - 2 * kMargin, kMost);
  const double tall = drawing + kTitle + 2 * kMargin + foot;
  const double scale = width / kWide;
  const SurfaceHandle surface{
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, width,
                                 static_cast<int>(std::lround(tall * scale))),
      &cairo_surface_destroy};
  const PenHandle pen{cairo_create(surface.get()), &cairo_destroy};
  cairo_scale(pen.get(), scale, scale);
  const Ink ink{pen.get()};
  ink.box(0, 0, kWide, tall + 1, look::white);
  ink.text(
      kMargin, kMargin,
      clean_text(words_of(Saying{said("Dose on {element}, {side} side"),
                                 {{"element", map.element}, {"side", Term{to_text(map.side)}}}},
                          voice)),
      {11, true, look::slate});
  draw_dose_map(ink, map, voice, kMargin, kMargin + kTitle, kWide - 2 * kMargin, kMost);
  if (!under.empty()) {
    const Style small{6.4, false, look::steel};
    const auto words = ink.lay(clean_text(under), small, kWide - 2 * kMargin);
    pango_layout_set_height(words.get(), -2);
    pango_layout_set_ellipsize(words.get(), PANGO_ELLIPSIZE_END);
    ink.colour(small.colour);
    cairo_move_to(pen.get(), kMargin, kMargin + kTitle + drawing + 6);
    pango_cairo_show_layout(pen.get(), words.get());
  }
  cairo_surface_flush(surface.get());
  std::string bytes;
  cairo_surface_write_to_png_stream(surface.get(), keep_bytes, &bytes);
  return bytes;
}

}  // namespace rb
