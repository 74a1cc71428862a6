// Draws a dose map with cairo: the same picture on paper and in a picture file.
#pragma once

#include "record/model/dose_map.h"
#include "record/pdf/ink.h"

namespace rb {

/// How tall the picture with axes and legend is at a width; never more than `most`.
double dose_drawing_height(const DoseMap& map, double width, double most);

/// Draws it with its top left corner at (x, y).
void draw_dose_map(const Ink& ink, const DoseMap& map, const Voice& voice, double x, double y,
                   double width, double most);

}  // namespace rb
