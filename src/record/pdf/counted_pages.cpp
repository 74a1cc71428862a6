#include "record/pdf/counted_pages.h"

#include <cairo-pdf.h>

#include "record/pdf/ink.h"

namespace rb {

namespace {

cairo_status_t drop_bytes(void* /*closure*/, const unsigned char* /*data*/, unsigned int /*n*/) {
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

Result<std::string> counted_pages(const Paper& paper,
                                  const std::function<void(cairo_surface_t*)>& describe,
                                  const std::function<int(cairo_t*, int pages)>& draw) {
  int pages = 0;
  std::string bytes;
  for (const bool final : {false, true}) {
    const SurfaceHandle surface{
        cairo_pdf_surface_create_for_stream(final ? keep_bytes : drop_bytes, &bytes, paper.width,
                                            paper.height),
        &cairo_surface_destroy};
    describe(surface.get());
    {
      const PenHandle pen{cairo_create(surface.get()), &cairo_destroy};
      pages = draw(pen.get(), pages);
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
