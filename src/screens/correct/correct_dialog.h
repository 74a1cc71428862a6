// Putting a past tap right: what to change, to what, and why. Nothing is overwritten: what comes
// out is a fix or a strike that names its target and its reason.
#pragma once

#include <string>

#include "pour/log/event.h"
#include "screens/entry/stage.h"

namespace rb::screens {

void draw_correct(Stage& stage, const Box& box, CorrectDraft& draft, const PourView& view,
                  const Plan& plan);

/// The event as it would read.
Event corrected(const CorrectDraft& draft);

/// Keeps the fix or strike with its reason.
void keep_correction(Stage& stage, const CorrectDraft& draft, const std::string& why,
                     std::optional<event::Chosen> chosen = {});

}  // namespace rb::screens
