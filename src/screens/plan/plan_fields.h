// The figures of a plan: their names, how they are written in the units shown, and how what was
// typed goes into the plan.
#pragma once

#include <string>

#include "screens/view/plan_edit.h"
#include "screens/words/say.h"

namespace rb::screens {

std::string field_label(const Say& say, const PlanDraft& draft, const FieldRef& ref);

/// "3.00 m", "60 kPa"; a dash where nothing stands.
std::string field_text(const Say& say, const PlanDraft& draft, const FieldRef& ref);

/// What is being typed with its unit; a dash for nothing.
std::string typed_text(const FieldRef& ref, const std::string& typed, Units units);

/// Whether it is typed in feet and inches, where those are the units.
bool is_length(const FieldRef& ref);
/// Whether anything stands there.
bool is_given(const PlanDraft& draft, const FieldRef& ref);
/// Whether it may be left out.
bool may_clear(const FieldRef& ref);

/// Whether what was typed is a figure; put_field() wants it to be.
bool is_figure(const FieldRef& ref, const std::string& typed, Units units);
void put_field(PlanDraft& draft, const FieldRef& ref, const std::string& typed, Units units);
void clear_field(PlanDraft& draft, const FieldRef& ref);

/// Whether a limit, or what the planner is asked, stands as the product's default.
bool is_default(const PlanDraft& draft, const FieldRef& ref);

/// What is wrong with a plan or with what the planner was asked, as a sentence about the tile it is
/// mended on: no name of a script's field stands in it.
std::string fault_words(const Say& say, const PlanDraft& draft, const Error& error);

}  // namespace rb::screens
