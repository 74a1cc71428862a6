// The table of a plan's figures: of each its name, its measure, where it stands and how it may be
// left out. A new figure is a line here, its word, its place on a page and its place in the plan.
#pragma once

#include <optional>
#include <span>

#include "base/measure.h"
#include "screens/view/plan_edit.h"
#include "screens/words/say.h"

namespace rb::screens {

struct FieldRow {
  PlanField field;
  Word label;
  Measure measure;
  std::optional<double> (*get)(const PlanDraft&, const FieldRef&);
  void (*put)(PlanDraft&, const FieldRef&, double);
  void (*clear)(PlanDraft&, const FieldRef&) = nullptr;  ///< null: it may not be left out
  /// Whether the product's default stands; null: it is compared with a new draft's.
  bool (*usual)(const PlanDraft&, const FieldRef&) = nullptr;
};

std::span<const FieldRow> field_rows();

}  // namespace rb::screens
