// A PDF whose pages tell how many there are: drawn twice, first to count. Inside this room.
#pragma once

#include <cairo.h>

#include <functional>
#include <string>

#include "base/result.h"
#include "record/pdf/paper.h"

namespace rb {

/// `describe` puts the metadata; `draw` draws all pages, told how many there are (0 at first), and
/// returns how many it drew. Errors: input, when cairo runs out of memory or room.
Result<std::string> counted_pages(const Paper& paper,
                                  const std::function<void(cairo_surface_t*)>& describe,
                                  const std::function<int(cairo_t*, int pages)>& draw);

}  // namespace rb
