#include "record/pdf/photo_page.h"

#include <algorithm>

#include "record/told/photo_words.h"

namespace rb {

namespace {

constexpr double kPhotoGap = 14;
constexpr double kMostTall = 200;
constexpr double kEmptyTall = 44;  // where there is no picture

// A photo with its words, laid out in a width.
class PhotoCell {
 public:
  PhotoCell(const Ink& ink, const PhotoLine& photo, const Shown& shown, double width)
      : ink_(ink), photo_(photo), width_(width) {
    const PhotoWords words = photo_words(photo, shown);
    lines_.emplace_back(ink, words.title, Style{8.2, true, look::slate}, width);
    lines_.emplace_back(ink, words.where, Style{7.6, false, look::slate}, width);
    lines_.emplace_back(ink, words.taken, Style{7.6, false, look::steel}, width);
    trouble_.emplace_back(ink, words.trouble, Style{8.2, true, look::red}, width - 16);
    if (!photo.picture) return;
    scale_ = std::min(width / photo.picture->wide, kMostTall / photo.picture->tall);
  }

  [[nodiscard]] double picture_tall() const {
    return photo_.picture ? scale_ * photo_.picture->tall
                          : std::max(kEmptyTall, trouble_.front().height() + 16);
  }
  [[nodiscard]] double words_tall() const {
    double tall = 6;
    for (const Lines& lines : lines_) tall += lines.height();
    return tall;
  }

  // The pictures of a row stand on one line.
  void draw(double x, double y, double under) const {
    const double tall = picture_tall();
    const double top = y + under - tall;
    if (photo_.picture) {
      picture(x, top);
    } else {
      ink_.frame(x, top, width_, tall, look::steel);
      trouble_.front().draw(ink_, x + 8, top + 8, 0, trouble_.front().count());
    }
    double at = y + under + 6;
    for (const Lines& lines : lines_) {
      lines.draw(ink_, x, at, 0, lines.count());
      at += lines.height();
    }
  }

 private:
  // The JPEG goes into the document as it is; a printer does no smoothing of its own, which the
  // archive's standard forbids (ISO 19005-3, not seen, second hand).
  void picture(double x, double y) const {
    const ShownPhoto& shown = *photo_.picture;
    const SurfaceHandle surface{
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, shown.wide, shown.tall),
        &cairo_surface_destroy};
    cairo_surface_set_mime_data(surface.get(), CAIRO_MIME_TYPE_JPEG,
                                reinterpret_cast<const unsigned char*>(shown.jpeg.data()),
                                shown.jpeg.size(), nullptr, nullptr);
    cairo_save(ink_.cr());
    cairo_translate(ink_.cr(), x, y);
    cairo_scale(ink_.cr(), scale_, scale_);
    cairo_set_source_surface(ink_.cr(), surface.get(), 0, 0);
    cairo_pattern_set_filter(cairo_get_source(ink_.cr()), CAIRO_FILTER_NEAREST);
    cairo_rectangle(ink_.cr(), 0, 0, shown.wide, shown.tall);
    cairo_fill(ink_.cr());
    cairo_restore(ink_.cr());
    ink_.frame(x, y, scale_ * shown.wide, scale_ * shown.tall, look::hair);
  }

  const Ink& ink_;
  const PhotoLine& photo_;
  double width_;
  double scale_ = 1;
  std::vector<Lines> lines_, trouble_;
};

}  // namespace

void draw_photos(RecordPage& page, const PourRecord& pour) {
  Sheet& sheet = page.sheet();
  const double width = (sheet.width() - kPhotoGap) / 2;
  for (std::size_t i = 0; i < pour.photos.size(); i += 2) {
    std::vector<PhotoCell> row;
    double pictures = 0;
    double words = 0;
    for (std::size_t k = i; k < std::min(i + 2, pour.photos.size()); ++k) {
      row.emplace_back(page.ink(), pour.photos[k], page.shown(), width);
      pictures = std::max(pictures, row.back().picture_tall());
      words = std::max(words, row.back().words_tall());
    }
    sheet.skip(12);
    sheet.keep(pictures + words);
    double x = sheet.left();
    for (const PhotoCell& cell : row) {
      cell.draw(x, sheet.y(), pictures);
      x += width + kPhotoGap;
    }
    sheet.skip(pictures + words);
  }
}

}  // namespace rb
