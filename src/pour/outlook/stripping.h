// Whether a face may be stripped at a moment: one verdict for the rules, the gate before STRIPPED
// and the screens. It advises: the engineer and local codes decide.
#pragma once

#include <optional>

#include "pour/log/state.h"

namespace rb {

/// Sooner after the last concrete than the plan allows or, where it says nothing, than that has set
/// (the late side).
struct StripTooSoon {
  Seconds waited{}, least{};
  bool planned = false;  ///< `least` is the plan's
};

/// Before the strength the plan wants was shown of the last concrete.
struct StripTooWeak {
  std::optional<Pressure> shown;  ///< none: nothing shows any
  Pressure least;
};

/// How leave to strip stands, where the plan asks for it. Leave counts from when the last concrete
/// came, for the face it was given for, by someone the plan gives a role (or by anyone, where it
/// names nobody): our own choice.
enum class StripLeave { not_asked, counts, none, before_concrete, no_role };

struct StripVerdict {
  Seconds came{};  ///< the last concrete of the element
  std::optional<StripTooSoon> soon;
  std::optional<StripTooWeak> weak;
  StripLeave leave = StripLeave::not_asked;
  /// An index into PourState::permits: the leave given last for the face by then, asked for or not.
  /// It clears nothing of `soon` and `weak`.
  std::optional<std::size_t> permit;
  [[nodiscard]] bool early() const { return soon || weak; }
  [[nodiscard]] bool without_leave() const {
    return leave != StripLeave::not_asked && leave != StripLeave::counts;
  }
};

/// Of a face of an element, were it stripped at `at`. None: no concrete has come.
std::optional<StripVerdict> judge_strip(const PourState& state, std::size_t element, Side side,
                                        Seconds at);

}  // namespace rb
