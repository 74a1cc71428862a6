#include "screens/plan/plan_fields.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>
#include <utility>
#include <vector>

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

namespace {

// Where a plan is at fault, from the whole to the part: "elements[1]", "rise_limit".
// Words of ours ("cord") come with a '=' before them, told already.
void add_steps(const Say& say, const Saying& where, std::vector<std::string>& steps) {
  const std::string_view words = where.english();
  if (!words.empty() && where.facts().empty() && words != "the plan") {
    steps.push_back("=" + words_of(where, say.voice()));
  }
  for (const Fact& fact : where.facts()) {
    if (const auto* part = std::get_if<Clause>(&fact.value)) add_steps(say, part->inner(), steps);
    if (const auto* field = std::get_if<std::string>(&fact.value)) steps.push_back(*field);
  }
  if (!where.verbatim().empty()) steps.push_back(where.verbatim());
}

// Fields that a script calls otherwise than the tile is named, or of which there are several.
const char* label_of(std::string_view field) {
  constexpr std::array<std::pair<std::string_view, const char*>, 14> kApart{{
      {"bays", said("bays")},
      {"elements", said("element")},
      {"id", said("name")},
      {"insert_spacing_factor", said("insertion spacing, radii")},
      {"lifts", said("lifts")},
      {"mixes", said("mix")},
      {"motors", said("rows and motors")},
      {"name", said("name")},
      {"people", said("people")},
      {"role", said("role")},
      {"rows", said("rows")},
      {"set_ref_temp", said("measured at")},
      {"site", said("site")},
      {"z", said("height")},
  }};
  for (const auto& [name, label] : kApart) {
    if (name == field) return label;
  }
  // The rest have the tile's name and a unit behind it: "strip_after_s".
  const FieldRow* found = nullptr;
  for (const FieldRow& row : field_rows()) {
    const std::string_view name = row.field.name;
    if (field.starts_with(name) && (found == nullptr || name.size() > found->field.name.size())) {
      found = &row;
    }
  }
  return found == nullptr ? "" : found->label;
}

// "W1", "C30", "row R2", "rise limit"; nothing for a step that no tile shows.
std::string step_words(const Say& say, const PlanDraft& draft, const Element*& element,
                       const std::string& step) {
  if (step.starts_with('=')) return step.substr(1);
  const std::size_t open = step.find('[');
  const std::string field = step.substr(0, open);
  const std::size_t number =
      open == std::string::npos ? 0 : std::strtoul(step.c_str() + open + 1, nullptr, 10);
  const auto one_of = [&](const auto& items) { return number > 0 && number <= items.size(); };
  const Plan& plan = draft.plan;
  if (field == "elements" && one_of(plan.elements)) {
    element = &plan.elements[number - 1];
    return element->id.text;
  }
  if (field == "mixes" && one_of(plan.mixes)) return plan.mixes[number - 1].id.text;
  if (field == "people" && one_of(plan.people)) return plan.people[number - 1].name;
  if (field == "rows" && element != nullptr && one_of(element->rows)) {
    return filled(said("row {row}"), {{"row", element->rows[number - 1].id.text}}, say.voice());
  }
  if (number > 0 && (field == "bays" || field == "lifts")) {
    const char* label = field == "bays" ? said("bay {}") : said("top of lift {}");
    return fmt::format(fmt::runtime(told(say.language, label)), number);
  }
  const char* label = label_of(field);
  return *label == '\0' ? std::string{} : std::string{told(say.language, label)};
}

// What a script's reader is told with names of fields, told of what stands on the tile.
Saying on_tile(const Saying& what) {
  constexpr std::array<std::pair<std::string_view, Said>, 7> kTold{{
      {"is {given~}; a number above {least~} and up to {most~} was expected",
       said("{given~} stands there; type more than {least~}, up to {most~}")},
      {"is {given~}; a number from {least~} to {most~} was expected",
       said("{given~} stands there; type {least~} to {most~}")},
      {"is missing", said("nothing stands there yet")},
      {"is below dose_min_s", said("less than the least vibration")},
      {"is below temp_min", said("colder than the coldest concrete")},
      {"is {low}, over temp_high", said("{low} is warmer than the warmest untested")},
      {"is above vpm_max", said("faster than the motor's greatest speed")},
  }};
  for (const auto& [script, tile] : kTold) {
    if (script == what.english()) return {tile, what.facts()};
  }
  return what;
}

}  // namespace

std::string fault_words(const Say& say, const PlanDraft& draft, const Error& error) {
  std::vector<std::string> steps;
  add_steps(say, error.where, steps);
  std::string place;
  const Element* element = nullptr;
  for (const std::string& step : steps) {
    const std::string words = step_words(say, draft, element, step);
    if (words.empty()) continue;
    if (!place.empty()) place += " \u00B7 ";
    place += words;
  }
  const Saying what = on_tile(error.what);
  std::string text = words_of(what, say.voice());
  if (!place.empty()) text.insert(0, place + ": ");
  // What to type stands in the sentence itself.
  const bool retold = !(what == error.what);
  if (!retold && !error.remedy.empty()) text += ". " + words_of(error.remedy, say.voice());
  return text;
}

}  // namespace rb::screens
