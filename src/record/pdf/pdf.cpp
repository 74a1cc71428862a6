#include "record/pdf/pdf.h"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include "record/model/clean_text.h"
#include "record/pdf/pdf_pages.h"

namespace rb {

namespace {

cairo_status_t drop_bytes(void* /*closure*/, const unsigned char* /*data*/, unsigned int /*n*/) {
  return CAIRO_STATUS_SUCCESS;
}

void put_metadata(cairo_surface_t* surface, const DailyRecord& record) {
  const std::string title =
      clean_text(fmt::format("Daily consolidation record {} {}", day_text(record), record.site));
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
  int pages = 0;
  std::string bytes;
  for (const bool final : {false, true}) {  // first to count the pages
    const SurfaceHandle surface{
        cairo_pdf_surface_create_for_stream(final ? keep_bytes : drop_bytes, &bytes, paper.width,
                                            paper.height),
        &cairo_surface_destroy};
    put_metadata(surface.get(), record);
    {
      const PenHandle pen{cairo_create(surface.get()), &cairo_destroy};
      pages = draw_pages(pen.get(), record, paper, pages, widths);
    }
    cairo_surface_finish(surface.get());
    const cairo_status_t status = cairo_surface_status(surface.get());
    if (status != CAIRO_STATUS_SUCCESS) {
      return fail(Error::Kind::input, "PDF", cairo_status_to_string(status),
                  said("See that memory and disk have room"));
    }
  }
  return bytes;
}

}  // namespace rb
