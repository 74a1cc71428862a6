// What a finger is in the middle of: which panel is open and what has been entered in it so far.
// Lost when the program ends, which loses nothing that was kept.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "pour/event.h"
#include "pour/state.h"

namespace rb::screens {

/// A height being typed: a top reading, a lift's end, or the new height of a correction.
struct PadDraft {
  enum class Use { top, lift_end, correction };
  Use use = Use::top;
  ElementId element{};
  int lift = 0;
  Length guess{};
  std::string typed{};       ///< empty: the guess stands
  std::optional<int> bay{};  ///< from 1; none = all
  Moment at{};               ///< when the pad was asked for: that is when it happened
};

/// A past tap being put right: what to change, to what, and why.
struct CorrectDraft {
  enum class Step { choose, time, height, row, why };
  Step step = Step::choose;
  EventId target{};
  Event before{};
  bool strike = false;
  Seconds shift{};  ///< of its time
  std::optional<Length> height{};
  std::optional<RowPlace> place{};
  std::string typed{};  ///< of the height
};

/// Words being typed on the screen's keys.
struct TypeDraft {
  enum class Use { note, hold, why };
  Use use = Use::note;
  std::string text{};
  std::optional<CorrectDraft> correcting{};  ///< for Use::why
  Moment at{};
};

struct NoteDraft {
  Moment at{};
};
struct HoldDraft {
  Moment at{};
};
struct RowDraft {
  RowPlace place{};
};
/// A row whose head is over the form's rating waits for a second tap.
struct RunAnywayDraft {
  RowPlace place{};
  Moment at{};
};
struct TapsDraft {
  int page = 0;
};
struct FindingsDraft {
  int page = 0;
};
struct MoreDraft {};
struct SettingsDraft {};
struct CloseDraft {};
struct QuitDraft {};
struct ElementsDraft {
  int page = 0;
};

using Dialog = std::variant<std::monostate, PadDraft, CorrectDraft, TypeDraft, NoteDraft, HoldDraft,
                            RowDraft, RunAnywayDraft, TapsDraft, FindingsDraft, MoreDraft,
                            SettingsDraft, CloseDraft, QuitDraft, ElementsDraft>;

struct Drafts {
  std::size_t element = 0;  ///< which of the pour's elements is shown
  Dialog dialog{};
  int rows_page = 0;
  Side rows_side = Side::near_side;  ///< whose rows are shown where both sides have some
  int pours_page = 0;
  bool figures = false;  ///< the keys show figures instead of letters
};

}  // namespace rb::screens
