// Parts of the record's page. Inside this room.
#pragma once

#include <string>
#include <string_view>

#include "record/told/shown.h"

namespace rb {

/// As it may stand in an element or, between quotes, in an attribute.
std::string html_text(std::string_view text);
/// An element's text and its end: "<h2>Findings</h2>".
std::string html_element(const char* name, std::string_view text, std::string_view more = {});

/// A face to touch, with its legend and stories; `id` is unlike any other's.
std::string html_face(const DoseMap& map, const Shown& shown, const std::string& id);
/// Fillings of the classes of dose, once a page.
std::string html_fillings();

/// What went on, on one axis of time: lifts, runs, trucks, tests, insertions, holds, findings.
std::string html_timeline(const PourRecord& pour, const Shown& shown);

/// A pour's photos with what stands under each; `room` is how many bytes of pictures the page still
/// takes, and less afterwards. One that finds no room is told to.
std::string html_photos(const PourRecord& pour, const Shown& shown, std::size_t& room);

}  // namespace rb
