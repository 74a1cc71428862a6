// The pad for a height: big keys, the unit always shown, a sensible guess to start from.
#pragma once

#include <optional>

#include "screens/entry/stage.h"

namespace rb::screens {

/// What has been typed, as a plain number; nothing when it is none.
std::optional<double> typed_number(const std::string& typed);

/// What has been typed, as a height; nothing when it is no number yet. Metres with a point, or feet
/// and inches with a foot mark between ("14'6" is 14 ft 6 in, "14'" and "14" are 14 ft).
std::optional<Length> typed_height(const std::string& typed, Units units);

/// Adds a key to what has been typed; keys that would make no number are passed over.
void press_key(std::string& typed, char key, Units units);

/// Twelve keys, three to a line, in an order in which a space is no key and '<' erases; their ids
/// begin with `name`. The one that was tapped, or none.
std::optional<char> key_tapped(Stage& stage, const Box& keys, std::string_view order,
                               const std::string& name = "key");

/// The value and the keys, in `box`. `typed` empty means the guess stands.
void draw_keys(Stage& stage, const Box& keys, std::string& typed);
/// The same for plain digits, so many at most.
void draw_digits(Stage& stage, const Box& keys, std::string& typed, std::size_t most);
/// The value in large figures with steps below it.
/// `guessed`: nobody measured what stands there as long as nothing is typed; it is shown so.
void draw_value(Stage& stage, const Box& box, std::string& typed, Length guess,
                bool guessed = false);

/// All bays or one of them, side by side; with more than fit, the others are reached by stepping.
void draw_bays(Stage& stage, const Box& box, std::optional<int>& bay, std::size_t bays);

/// The dialog for a top reading or a lift's end.
void draw_pad(Stage& stage, const Box& box, PadDraft& draft, const PourView& view);

}  // namespace rb::screens
