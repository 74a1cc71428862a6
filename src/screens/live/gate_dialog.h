// Going on over what is not in order, by name and reason; and going on after the form moved.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

void draw_gate(Stage& stage, const Box& box, const GateDraft& draft, const PourView& view,
               const Plan& plan);
void draw_resume(Stage& stage, const Box& box, const ResumeDraft& draft, const Plan& plan);

/// Keeps what was gone on over with its reason, and then what it was gone on with: that happens
/// now, not when the question was asked.
void keep_gone_on(Stage& stage, const TypeDraft& draft, const std::string& why,
                  std::optional<event::Chosen> chosen = {});

}  // namespace rb::screens
