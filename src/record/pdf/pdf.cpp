#include "record/pdf/pdf.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include "record/model/clean_text.h"
#include "record/pdf/counted_pages.h"
#include "record/pdf/pdf_pages.h"
#include "record/told/shown.h"

namespace rb {

namespace {

void put_metadata(cairo_surface_t* surface, const DailyRecord& record) {
  const std::string title = clean_text(
      fmt::format("{} {} {}", Shown{record}.record_title(), day_text(record), record.site));
  const std::string made = to_text(record.as_of).substr(0, 19) + "Z";  // without the milliseconds
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "Risebook");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, made.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, made.c_str());
}

}  // namespace

Result<std::string> to_pdf(const DailyRecord& record) {
  const Paper paper = record.units == Units::us ? kLetter : kA4;
  TypeWidths widths;
  return counted_pages(
      paper, [&](cairo_surface_t* surface) { put_metadata(surface, record); },
      [&](cairo_t* pen, int pages) { return draw_pages(pen, record, paper, pages, widths); });
}

}  // namespace rb
