// A pour's photos on paper, two beside each other. Inside this room.
#pragma once

#include "record/pdf/record_page.h"

namespace rb {

/// Under the table of photos. What has no picture is named in its place.
void draw_photos(RecordPage& page, const PourRecord& pour);

}  // namespace rb
