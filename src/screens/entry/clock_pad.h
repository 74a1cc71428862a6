// The pad for a time of day: four digits, and the day is the latest one on which it is past.
#pragma once

#include <optional>
#include <string>

#include "screens/entry/stage.h"

namespace rb::screens {

/// "0512" as the latest such minute that is not after `latest`; none while it is no time of day
/// yet.
std::optional<Moment> typed_clock(const std::string& typed, Moment latest,
                                  std::chrono::minutes utc_offset);

/// `kept`: the moment is typed_clock(typed).
PanelEnd draw_clock_pad(Stage& stage, const Box& box, const std::string& title, std::string& typed,
                        Moment latest);

}  // namespace rb::screens
