// Trucks: who waits and discharges, a truck entered, where its load went, its fresh tests, and the
// air at the form.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// A truck to be entered, guessed from the one before: the next ticket, its mix, volume and way.
TruckDraft new_truck(const PourView& view, const Plan& plan, Moment at);

void draw_trucks(Stage& stage, const Box& box, TrucksDraft& draft, const PourView& view,
                 const Plan& plan);
void draw_truck(Stage& stage, const Box& box, TruckDraft& draft, const PourView& view,
                const Plan& plan);
void draw_load(Stage& stage, const Box& box, LoadDraft& draft, const PourView& view);
void draw_test(Stage& stage, const Box& box, TestDraft& draft, const PourView& view);
void draw_air(Stage& stage, const Box& box, AirDraft& draft);

}  // namespace rb::screens
