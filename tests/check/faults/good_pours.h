// A wall, a column and a deck that go right in every respect, tapped as they happened: what the
// single faults are put into.
#pragma once

#include <functional>
#include <vector>

#include "../pour_text.h"

namespace rb::test {

/// Two bays of 2 m, 2.4 m high, 0.25 m thick, in four lifts half an hour apart; a row a lift and
/// nothing else vibrates it. The form bears 50 kPa, full of liquid it would bear 57.6.
Pour good_wall();
/// 0.6 x 0.6 x 2.4 m, the same hours; a row a lift, and insertions, for it is thick.
Pour good_column();
/// 6 x 4 x 0.2 m in two strips, one after the other; insertions alone.
Pour good_deck();

/// When the second load of the wall and the column comes, and with it their third lift.
inline constexpr double kSecondHalf = 4000;

/// Events in order of time, each entered and kept as it happened.
void tap(std::vector<Event>& events);
/// Besides, something done to what the book holds.
Pour& in_book(Pour& pour, const std::function<void(std::vector<Event>&)>& change);

/// The row's run and rest, once, are left out.
Pour& never_ran(Pour& pour, const std::string& row);

}  // namespace rb::test
