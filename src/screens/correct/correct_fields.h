// What of a past tap besides its moment, height and row can be put right, whatever kind it is of.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "screens/entry/drafts.h"
#include "screens/words/say.h"

namespace rb::screens {

enum class CorrectField { lift, bay, ticket, volume, slump, temp, batched, motors };

/// Those a tap has, in the order they are offered.
std::vector<CorrectField> fields_to_correct(const Happening& what);
Word correct_word(CorrectField field);

/// A lift's or a bay's number; of a bay none: all.
std::optional<int> number_in(const Happening& what, CorrectField field);
void put_number(Happening& what, CorrectField field, std::optional<int> number);

/// A figure as it is typed, that of the tap for a guess.
FigureEntry figure_in(const Happening& what, CorrectField field, Units units);
void put_figure(Happening& what, CorrectField field, double shown, Units units);

/// Whether a tap may speak of all bays at once.
bool may_be_all(const Happening& what);

/// Of a load, whichever of its taps it is.
void put_ticket(Happening& what, const std::string& ticket);
std::optional<Moment> batched_in(const Happening& what);
void put_batched(Happening& what, Moment batched);

/// The motors of a hang; null: it is none.
const std::vector<MotorId>* motors_in(const Happening& what);
void put_motors(Happening& what, std::vector<MotorId> motors);

}  // namespace rb::screens
