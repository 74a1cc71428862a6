// The table of a plan's figures: of each its name and label, its measure, where it stands, how it
// may be left out, and the page that lists it. A new figure is a line here and its place in the
// plan.
#pragma once

#include <optional>
#include <span>

#include "base/measure.h"
#include "screens/view/plan_edit.h"
#include "screens/words/say.h"

namespace rb::screens {

struct FieldRow {
  PlanField field{};
  const char* label = nullptr;  ///< in English
  Measure measure{};
  std::optional<double> (*get)(const PlanDraft&, const FieldRef&) = nullptr;
  void (*put)(PlanDraft&, const FieldRef&, double) = nullptr;
  void (*clear)(PlanDraft&, const FieldRef&) = nullptr;  ///< null: it may not be left out
  /// Whether the product's default stands; null: it is compared with a new draft's.
  bool (*usual)(const PlanDraft&, const FieldRef&) = nullptr;
  /// The page that lists it, in the order of the table; none: a page names it in its own place.
  std::optional<PlanEdit::Page> page{};
  /// Whether it is listed for what the page shows; null: always.
  bool (*listed)(const PlanDraft&, const FieldRef&) = nullptr;
};

std::span<const FieldRow> field_rows();
/// Whether its page lists it for what is shown.
bool is_asked(const PlanDraft& draft, const FieldRef& ref, const FieldRow& row);

}  // namespace rb::screens
