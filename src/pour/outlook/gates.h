// What must be in order before a lift is begun, a row is run or a face is stripped. Whoever goes on
// over it gives a name and a reason, kept as an event (event::Override): it lets the log book what
// happens and clears nothing. Against a form that moved or a motor that came loose there is none.
#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "pour/log/kinds_paper.h"
#include "pour/outlook/run_wanted.h"
#include "pour/outlook/stripping.h"

namespace rb {

enum class Gate {
  walk_down,    ///< a point of it is not answered, or not in order
  unrated,      ///< the plan gives no rating of the form
  untested,     ///< no temperature measured on the mix in use
  head_over,    ///< the head on the row is over the form's rating
  not_hung,     ///< no motor of the row was logged as hung
  cables_open,  ///< not every safety cable was seen fixed
  over_set,     ///< the concrete in the row's reach may have set
  strip_early,  ///< the face is not to be stripped yet, by time, strength or set
  strip_leave,  ///< the plan asks for leave to strip, and none counts
};
/// What the event names it by: a rule's id, where a rule speaks of it.
const char* rule_of(Gate gate);
/// What is not in order, in English, to be told in the reader's language.
const char* words_of(Gate gate);
/// The words of what an event names; null: none of ours.
const char* gate_words(std::string_view rule);

/// Reasons to choose from.
inline constexpr std::array kReasonsToGoOn{event::Chosen::looked_over,
                                           event::Chosen::engineer_agreed,
                                           event::Chosen::superintendent_agreed};

/// What is not in order, and whether it was gone on over since it was found so.
struct OpenGate {
  Gate gate;
  bool passed = false;
  bool operator==(const OpenGate&) const = default;
};
std::vector<Gate> not_passed(const std::vector<OpenGate>& gates);

/// An override of a lift's gate stands for the element, of a row's for the row and the lift it
/// works for.
std::vector<OpenGate> gates_of_lift(const PourState& state, std::size_t element, Seconds now);
std::vector<OpenGate> gates_of_run(const PourState& state, std::size_t element, std::size_t row,
                                   const RunAnswer& answer);
/// Of a face that is to be stripped; asked each time, for a face is stripped once.
std::vector<Gate> gates_of_strip(const StripVerdict& verdict);

}  // namespace rb
