#include "record/pdf/ink.h"

#include "record/pdf/typeface.h"

namespace rb {

namespace {

constexpr const char* kFamily = "B612";

PangoAlignment pango(Align align) {
  switch (align) {
    case Align::centre:
      return PANGO_ALIGN_CENTER;
    case Align::right:
      return PANGO_ALIGN_RIGHT;
    case Align::left:
      break;
  }
  return PANGO_ALIGN_LEFT;
}

double points(int pango_units) {
  return static_cast<double>(pango_units) / PANGO_SCALE;
}

}  // namespace

Ink::Ink(cairo_t* cr)
    : cr_(cr), context_((bring_typeface(), pango_cairo_create_context(cr)), [](PangoContext* c) {
        g_object_unref(c);
      }) {
  // No hinting: the same layout on every machine and on every kind of surface.
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context_.get(), options);
  cairo_font_options_destroy(options);
  pango_cairo_context_set_resolution(context_.get(), 72);
  pango_context_set_round_glyph_positions(context_.get(), FALSE);
  pango_context_set_language(context_.get(), pango_language_from_string("en"));
  pango_context_set_base_dir(context_.get(), PANGO_DIRECTION_LTR);
}

namespace {

// No unit is parted at its stroke: "(ft/h)" stands on one line.
void keep_units(PangoLayout* layout, std::string_view text) {
  constexpr std::size_t kLongestUnit = 8;
  PangoAttrList* whole = nullptr;
  for (auto open = text.find('('); open != std::string_view::npos;
       open = text.find('(', open + 1)) {
    const auto close = text.find(')', open);
    if (close == std::string_view::npos) break;
    const std::string_view unit = text.substr(open, close - open);
    if (unit.size() > kLongestUnit || unit.find('/') == std::string_view::npos) continue;
    if (whole == nullptr) whole = pango_attr_list_new();
    PangoAttribute* kept = pango_attr_allow_breaks_new(FALSE);
    kept->start_index = static_cast<guint>(open);
    kept->end_index = static_cast<guint>(close + 1);
    pango_attr_list_insert(whole, kept);
  }
  if (whole == nullptr) return;
  pango_layout_set_attributes(layout, whole);
  pango_attr_list_unref(whole);
}

}  // namespace

LayoutHandle Ink::lay(std::string_view text, const Style& style, double width) const {
  LayoutHandle layout{pango_layout_new(context_.get()), &g_object_unref};
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family_static(font, kFamily);
  pango_font_description_set_absolute_size(font, style.size * PANGO_SCALE);
  pango_font_description_set_weight(font, style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  char* valid = g_utf8_make_valid(text.data(), static_cast<gssize>(text.size()));
  pango_layout_set_text(layout.get(), valid, -1);
  keep_units(layout.get(), valid);
  g_free(valid);
  pango_layout_set_line_spacing(layout.get(), 1.12F);
  pango_layout_set_auto_dir(layout.get(), FALSE);
  if (width >= 0) {
    pango_layout_set_width(layout.get(), static_cast<int>(width * PANGO_SCALE));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_alignment(layout.get(), pango(style.align));
  }
  return layout;
}

double Ink::height(const LayoutHandle& layout) {
  int height = 0;
  pango_layout_get_size(layout.get(), nullptr, &height);
  return points(height);
}

double Ink::width(const LayoutHandle& layout) {
  int width = 0;
  pango_layout_get_size(layout.get(), &width, nullptr);
  return points(width);
}

void Ink::text(double x, double y, std::string_view text, const Style& style) const {
  const LayoutHandle layout = lay(text, style);
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  const double w = width(layout);
  if (style.align == Align::centre) x -= w / 2;
  if (style.align == Align::right) x -= w;
  colour(style.colour);
  cairo_move_to(cr_, x, y);
  pango_cairo_show_layout(cr_, layout.get());
}

void Ink::fitted(double x, double y, double width, std::string_view text,
                 const Style& style) const {
  const LayoutHandle layout = lay(text, style, width);
  pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  pango_layout_set_height(layout.get(), 0);
  pango_layout_set_ellipsize(layout.get(), PANGO_ELLIPSIZE_END);
  colour(style.colour);
  cairo_move_to(cr_, x, y);
  pango_cairo_show_layout(cr_, layout.get());
}

void Ink::box(double x, double y, double w, double h, Colour fill) const {
  colour(fill);
  cairo_rectangle(cr_, x, y, w, h);
  cairo_fill(cr_);
}

void Ink::frame(double x, double y, double w, double h, Colour c, double width) const {
  colour(c);
  cairo_set_line_width(cr_, width);
  cairo_rectangle(cr_, x, y, w, h);
  cairo_stroke(cr_);
}

void Ink::line(double x1, double y1, double x2, double y2, Colour c, double width) const {
  colour(c);
  cairo_set_line_width(cr_, width);
  cairo_move_to(cr_, x1, y1);
  cairo_line_to(cr_, x2, y2);
  cairo_stroke(cr_);
}

cairo_status_t keep_bytes(void* text, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace rb
