// A plan in the making: what was entered, what was only guessed and must be looked at, and whether
// a pour can be opened with it. Pure; the plan's reader has the last word on what is wrong.
//
// Guesses: bays of about 3 m (our own choice); lifts of at most 0.5 m (ACI 309R, about 20 in, from
// memory); motors at most 1.2 m apart, each working 0.6 m to every side (4 ft is the closest
// spacing ACI 309R gives, from memory); a row every metre from 0.45 m (common practice, no source).
// Reach depends on motor, form and mix: ask the motors' maker or try it on a mock-up.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/moment.h"
#include "base/result.h"
#include "pour/planner/planner.h"

namespace rb {

/// How an element's rows are laid out when they are made by a pattern.
struct RowPattern {
  Length lowest = metres(0.45);
  Length apart = metres(1.0);  ///< row to row
  int motors = 0;              ///< a row; 0 = as many as the length wants
  Length reach_x = metres(0.6);
  Length reach_z = metres(0.6);
  bool both_sides = false;
  bool operator==(const RowPattern&) const = default;
};

/// What of an element was guessed and not confirmed since.
struct ElementGuesses {
  bool bays = false, lifts = false, rows = false;
  RowPattern pattern{};
  /// What it had before its section was round, which comes back with a flat one.
  std::optional<Length> flat_thickness{};
  std::vector<Patch> flat_openings{};
  bool operator==(const ElementGuesses&) const = default;
};

enum class Guessed { name, bays, lifts, rows, mix };

/// Something to be confirmed before the pour may be opened.
struct OpenGuess {
  Guessed what = Guessed::name;
  std::size_t element = 0;  ///< for bays, lifts and rows
  bool operator==(const OpenGuess&) const = default;
};

struct PlanDraft {
  Plan plan;                              ///< as it stands; may not be whole yet
  std::vector<ElementGuesses> guesses{};  ///< one an element
  bool name_guessed = false;              ///< copied from another pour
  bool mix_guessed = false;
  /// What the planner is asked beyond the plan: crew, motors, trucks, the concrete's temperature.
  /// Its element, mix, method and limits are the plan's when it is asked.
  PlanWish wish{};
  bool operator==(const PlanDraft&) const = default;
};

/// How the rows of an element hang, as far as a pattern tells it.
RowPattern pattern_of(const Element& element);

/// Nothing but a foreman without a name and a mix that is guessed.
PlanDraft empty_plan(Units units);
/// Another pour's plan, all of it; only its name waits to be made new or confirmed.
PlanDraft copy_of(const Plan& plan);

/// A wall without sizes, named W1, W2 ... (first that is free).
void add_element(PlanDraft& draft);
void remove_element(PlanDraft& draft, std::size_t element);
void add_mix(PlanDraft& draft);
void add_person(PlanDraft& draft);

/// A size that changes makes what depends on it be guessed anew: bays and rows by the length, lifts
/// and rows by the rise.
void set_kind(PlanDraft& draft, std::size_t element, ElementKind kind);
void set_length(PlanDraft& draft, std::size_t element, Length length);
void set_height(PlanDraft& draft, std::size_t element, Length height);
/// A round section is one bay and as thick as it is long.
void set_section(PlanDraft& draft, std::size_t element, trade::Section section);
void set_thickness(PlanDraft& draft, std::size_t element, Length thickness);

/// So many equal bays; so many equal lifts. At least one, at most kMostParts.
void set_bay_count(PlanDraft& draft, std::size_t element, int count);
void set_lift_count(PlanDraft& draft, std::size_t element, int count);
inline constexpr int kMostParts = 60;
/// One bay's length; the last bay takes up the difference while it can.
void set_bay(PlanDraft& draft, std::size_t element, std::size_t bay, Length length);
void set_lift(PlanDraft& draft, std::size_t element, std::size_t lift, Length top);
/// All rows made anew by the pattern, which is kept.
void set_pattern(PlanDraft& draft, std::size_t element, const RowPattern& pattern);
void set_row_height(PlanDraft& draft, std::size_t element, std::size_t row, Length z);

/// What the planner would be asked about an element as the draft stands.
PlanWish wish_for(const PlanDraft& draft, std::size_t element);
/// Rows, lifts and the motors' feed by the planner; rows and lifts stand as guesses, bays as they
/// were. Errors are the planner's; the draft is then as it was.
Result<PlannedPour> compute(PlanDraft& draft, std::size_t element);

std::vector<OpenGuess> open_guesses(const PlanDraft& draft);
void confirm(PlanDraft& draft, const OpenGuess& guess);
void confirm_all(PlanDraft& draft);

/// The plan a pour can be opened with, or what is wrong with it first, in the reader's words. Does
/// not ask whether guesses were confirmed.
Result<Plan> finished(const PlanDraft& draft);

/// A name for the pour's book-keeping: its day and name in plain letters, with a number behind when
/// that is taken: "2026-03-02-core-wall-cw2".
PourId new_pour_id(const std::string& name, const std::string& day,
                   const std::vector<PourId>& taken);

}  // namespace rb
