// The steps of a correction in which a lift, a bay, a ticket, a figure, a time or the motors are
// changed: each leaves what it made in the draft.
#pragma once

#include "screens/correct/correct_fields.h"
#include "screens/entry/stage.h"

namespace rb::screens {

/// Draws over the panel's whole box; true when the step is done and the reason is asked for next.
bool draw_clock_step(Stage& stage, const Box& box, CorrectDraft& draft);
bool draw_figure_step(Stage& stage, const Box& box, CorrectDraft& draft);
bool draw_batched_step(Stage& stage, const Box& box, CorrectDraft& draft);

/// Draws inside the panel, under what the tap will read.
void draw_number_step(Stage& stage, const Box& in, CorrectDraft& draft, std::size_t most);
void draw_motors_step(Stage& stage, const Box& in, CorrectDraft& draft, const Plan& plan);

/// The taps of the load a tap is of, but for it: a ticket is changed in all of them.
void take_along_ticket(CorrectDraft& draft, const TapList& taps);

}  // namespace rb::screens
