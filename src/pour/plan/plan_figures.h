// The figures of a plan that may be left out, told once each: their names in JSON, what they may
// be, and where they stand. Inside this room.
#pragma once

#include "pour/plan/json_fields.h"

namespace rb {

/// Those that are given; throws BadField.
void read_figures(Fields& f, Element& element);
void read_figures(Fields& f, Mix& mix);
void read_figures(Fields& f, Limits& limits);

/// Those that are given are written.
void write_figures(Json& json, const Element& element);
void write_figures(Json& json, const Mix& mix);
void write_figures(Json& json, const Limits& limits);

}  // namespace rb
