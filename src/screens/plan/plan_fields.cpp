#include "screens/plan/plan_fields.h"

#include <algorithm>
#include <array>

#include "screens/entry/number_pad.h"
#include "screens/plan/plan_field_table.h"

namespace rb::screens {

namespace {

using Value = std::optional<double>;

constexpr int kMostMotors = 999;  // at hand, and hands to hang them: what three figures hold

const Element& element_of(const PlanDraft& d, const FieldRef& r) {
  return d.plan.elements[r.of];
}

const FieldRow& row_of(const FieldRef& ref) {
  const auto rows = field_rows();
  return *std::find_if(rows.begin(), rows.end(),
                       [&](const FieldRow& row) { return row.field == ref.field; });
}

// What the planner is asked beyond the plan.
bool of_planner(const FieldRef& ref) {
  return row_of(ref).page == PlanEdit::Page::compute;
}

Value typed_value(const FieldRef& ref, const std::string& typed, Units units) {
  const Measure measure = row_of(ref).measure;
  if (measure == Measure::length) {
    const auto length = typed_height(typed, units);
    // Feet and inches leave no tail of digits in the plan.
    return length ? Value{from_shown(in_metres(*length), measure, Units::si)} : Value{};
  }
  const auto shown = typed_number(typed);
  return shown ? Value{from_shown(*shown, measure, units)} : Value{};
}

std::string with_unit(const std::string& figure, Measure measure, Units units) {
  const std::string unit = unit_text(measure, units);
  return unit.empty() ? figure : figure + " " + unit;
}

}  // namespace

std::string field_label(const Say& say, const PlanDraft& draft, const FieldRef& ref) {
  const char* label = told(say.language, row_of(ref).label);
  if (ref.field == PlanField::bay || ref.field == PlanField::lift) {
    return fmt::format(fmt::runtime(label), ref.item + 1);
  }
  if (ref.field == PlanField::row) {
    const Row& at = element_of(draft, ref).rows[ref.item];
    std::string name = at.id.text;
    if (element_of(draft, ref).has_rows(Side::far_side)) {
      name += " " + say(at.side == Side::near_side ? Word::near_side : Word::far_side);
    }
    return fmt::format(fmt::runtime(label), name, at.motors.size());
  }
  if (ref.field == PlanField::height && element_of(draft, ref).kind == ElementKind::deck) {
    return say(Word::plan_width);
  }
  if (ref.field == PlanField{"crew"} && element_of(draft, ref).kind == ElementKind::deck) {
    return say(Word::plan_hands_deck);
  }
  if (ref.field == PlanField::length && element_of(draft, ref).section == trade::Section::round) {
    return say(Word::plan_diameter);
  }
  return label;
}

std::string field_text(const Say& say, const PlanDraft& draft, const FieldRef& ref) {
  const FieldRow& row = row_of(ref);
  const Value value = row.get(draft, ref);
  if (!value) return "\u2013";
  if (row.measure == Measure::length) return say.height(metres(*value));
  return with_unit(entry_text(*value, row.measure, say.units), row.measure, say.units);
}

std::string typed_text(const FieldRef& ref, const std::string& typed, Units units) {
  if (typed.empty()) return "\u2013";
  const Measure measure = row_of(ref).measure;
  const std::size_t mark = typed.find('\'');
  if (measure == Measure::length && units == Units::us) {
    if (mark == std::string::npos) return typed + "\u2032";
    return fmt::format("{}\u2032 {}\u2033", typed.substr(0, mark), typed.substr(mark + 1));
  }
  return with_unit(typed, measure, units);
}

bool is_length(const FieldRef& ref) {
  return row_of(ref).measure == Measure::length;
}

bool may_clear(const FieldRef& ref) {
  return row_of(ref).clear != nullptr;
}

bool is_given(const PlanDraft& draft, const FieldRef& ref) {
  return row_of(ref).get(draft, ref).has_value();
}

bool is_figure(const FieldRef& ref, const std::string& typed, Units units) {
  const Value value = typed_value(ref, typed, units);
  if (!value) return false;
  if (row_of(ref).measure == Measure::count) {
    const bool parts = !of_planner(ref);
    return *value >= 1 && *value <= (parts ? kMostParts : kMostMotors);
  }
  // Zero is a size only where the reader may say so: a row at the base, a share, a tolerance.
  return *value > 0 || (ref.field != PlanField::row_apart && ref.field != PlanField::bay);
}

void put_field(PlanDraft& draft, const FieldRef& ref, const std::string& typed, Units units) {
  const Value value = typed_value(ref, typed, units);
  if (value) row_of(ref).put(draft, ref, *value);
}

void clear_field(PlanDraft& draft, const FieldRef& ref) {
  if (const auto clear = row_of(ref).clear) clear(draft, ref);
}

bool is_default(const PlanDraft& draft, const FieldRef& ref) {
  if (const auto usual = row_of(ref).usual) return usual(draft, ref);
  if (!of_planner(ref)) return false;
  const Value usual = row_of(ref).get(PlanDraft{}, ref);
  return usual && usual == row_of(ref).get(draft, ref);
}

}  // namespace rb::screens
