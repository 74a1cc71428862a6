// What a finger is in the middle of: which panel is open and what has been entered in it so far.
// Lost when the program ends, which loses nothing that was kept.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/made_once.h"
#include "base/result.h"
#include "base/secret.h"
#include "pour/log/happening.h"
#include "pour/log/state.h"
#include "screens/view/plan_edit.h"
#include "screens/view/spot_view.h"
#include "screens/view/tap_filter.h"
#include "screens/view/truck_view.h"

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
  std::string asked_for{};   ///< typed so far over the planned top that it was asked about
};

/// A figure being typed, in the unit it is shown in.
enum class Figure {
  volume,
  slump,
  concrete_temp,
  air,
  density,
  air_temp,
  spacing,
  each,
  depth,
  points,
  heads,
  speed,
  hardening,  ///< the temperature of hardening concrete
  humidity,
  wind,
  part,      ///< of a load, that went into an element
  returned,  ///< of a load, that went back
  age_days,  ///< of a specimen, when it was broken
  broke_at,  ///< its strength
  blemish_wide,
  blemish_high,
  blemish_deep,  ///< into the face
};
struct FigureEntry {
  Figure what = Figure::volume;
  std::string typed{};            ///< empty: the guess stands
  std::optional<double> guess{};  ///< none where only a measurement will do
};

/// A past tap being put right: what to change, to what, and why.
struct CorrectDraft {
  enum class Step { choose, time, clock, height, row, number, figure, batched, motors, why };
  Step step = Step::choose;
  EventId target{};
  Moment at{};        ///< as it reads
  Happening what{};   ///< the same
  Seconds stepped{};  ///< the wall clock it is told by, ahead of the pour's
  int turn = 0;       ///< which page of rows
  bool strike = false;
  Seconds shift{};  ///< of its time
  std::optional<Length> height{};
  std::optional<RowPlace> place{};
  std::string typed{};  ///< of the height, or of a time of day
  int field = 0;        ///< which of the others is changed (correct_fields.h)
  std::optional<FigureEntry> figure{};
  std::optional<Happening> edited{};  ///< `what` with the others changed; none: none is
  std::vector<ToldTap> along{};  ///< taps of the same load: their ticket goes with the target's
};

/// A truck being entered.
struct TruckDraft {
  enum class Step { form, mix };
  Step step = Step::form;
  std::string ticket{};
  MixId mix{};
  std::optional<Volume> volume{};
  Seconds batched{};     ///< before `at`
  Seconds arrived{};     ///< before `at`
  bool guessed = false;  ///< from the truck before
  std::optional<FigureEntry> figure{};
  int page = 0;
  Moment at{};  ///< when the panel was asked for
};
/// A fresh test being entered: only what was measured is kept.
struct TestDraft {
  TicketId ticket{};
  std::optional<Length> slump{};
  std::optional<Celsius> temp{};
  std::optional<double> air{};  ///< per cent
  std::optional<MassPerVolume> density{};
  std::vector<SpecimenId> specimens{};  ///< taken of it
  std::optional<FigureEntry> figure{};
  Moment at{};
};
/// The air at the form; its temperature is asked for first, the rest only where it was read.
struct AirDraft {
  std::optional<FigureEntry> figure{FigureEntry{.what = Figure::air_temp}};
  std::optional<Celsius> temp{};
  std::optional<double> humidity{};  ///< per cent
  std::optional<Velocity> wind{};
  Moment at{};
};
/// Where a load went: what of it into which element, and what back to the plant.
struct LoadDraft {
  TicketId ticket{};
  std::optional<FigureEntry> figure{};
  std::size_t part = 0;  ///< whose volume `figure` is; past the last one: what went back
  int page = 0;
  Moment at{};
};
/// Which specimen was broken.
struct SpecimensDraft {
  int page = 0;
};
/// A specimen broken: its age and its strength.
struct SpecimenDraft {
  SpecimenId specimen{};
  std::optional<double> age_days{};
  std::optional<Pressure> strength{};
  std::optional<FigureEntry> figure{};
  Moment at{};
};
/// What comes after the last lift.
struct AfterDraft {
  std::optional<FigureEntry> figure{};
  Moment at{};
  std::optional<Side> strip{};  ///< stripped, tapped once
};
/// A stripped face: what is found on it, and what became of it.
struct StripDraft {
  enum class Step { face, fresh, card, repair, photos };
  enum class Text { kind, method, product, who, refused };
  Side side = Side::near_side;
  Step step = Step::face;
  std::optional<Side> asked{};            ///< stripped, tapped once
  Patch patch{};                          ///< drawn and not kept yet
  std::optional<event::Defect> defect{};  ///< what it is
  std::string kind{};                     ///< the same in words of one's own
  std::optional<Length> depth{};          ///< of it
  EventId blemish{};                      ///< whose card it is
  event::Repair repair{};                 ///< of it, so far
  std::optional<Text> typing{};           ///< of that, or of a look that did not accept it
  std::string text{};                     ///< typed so far
  std::optional<FigureEntry> figure{};    ///< of its size
  int page = 0, turn = 0;
  std::optional<Moment> looked{};  ///< for photos
  Moment at{};                     ///< when it was drawn, or its figure or repair begun
};
struct PressureDraft {};
struct InvertersDraft {
  int page = 0;
};
/// What an inverter is set to, being typed.
struct SpeedDraft {
  InverterId inverter{};
  FigureEntry figure{.what = Figure::speed};
  Moment at{};
  std::optional<double> asked{};  ///< kept once, though the motors are not to turn at it
};
/// Insertions of an internal vibrator being logged for a lift.
struct InsertDraft {
  event::Insert what{};
  std::optional<FigureEntry> figure{};
  Moment at{};
};

/// A motor of a row that works no longer.
struct MotorOutDraft {
  RowPlace place{};
  int turn = 0;  ///< which page of motors
};
/// A run that was not logged while it ran.
struct RanEarlierDraft {
  enum class Step { form, clock, why };
  Step step = Step::form;
  RowPlace place{};
  std::optional<Moment> from{};  ///< by the wall clock
  Seconds span{90};
  std::string typed{};  ///< of the time of day
};

/// Words being typed on the screen's keys.
struct TypeDraft {
  enum class Use {
    note,
    hold,
    why,
    ticket,
    joint,
    gate,
    permit,
    specimens,
    sent_back,
    ran_earlier,
    new_ticket
  };
  Use use = Use::note;
  std::string text{};
  std::optional<CorrectDraft> correcting{};    ///< for Use::why
  std::optional<TruckDraft> truck{};           ///< for Use::ticket
  std::optional<TestDraft> test{};             ///< for Use::specimens
  std::optional<event::Joint> joint{};         ///< for Use::joint, its decision to be typed
  std::optional<event::PermitStrip> permit{};  ///< for Use::permit, its reason to be typed
  std::optional<event::SendBack> sent{};       ///< for Use::sent_back, its reason to be typed
  std::optional<RanEarlierDraft> ran{};        ///< for Use::ran_earlier, its reason to be typed
  std::vector<event::Override> gates{};        ///< for Use::gate, their reason to be typed
  std::optional<Happening> then{};             ///< for Use::gate, what is gone on with
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
/// A lift, a run or a stripped face over what is not in order waits for a name and a reason.
struct GateDraft {
  std::optional<RowPlace> place{};  ///< of the row that is to run
  std::optional<Side> strip{};      ///< the face that is to be stripped; neither: a lift to begin
  ElementId element{};
  int lift = 0;
};
/// Going on after the form moved or a motor came loose.
struct ResumeDraft {
  Moment at{};
};
/// What a list shows, and what of it is being chosen.
struct FilterDraft {
  enum class By { none, what, row, lift, person };
  By choosing = By::none;  ///< what: which of them
  TapFilter set{};
  int page = 0;
};
struct TapsDraft {
  int page = 0;
  FilterDraft filter{};
};
struct FindingsDraft {
  int page = 0;
  std::string cause{};  ///< whose findings are listed; empty: the first of each
  int causes_page = 0;  ///< to go back to
  FilterDraft filter{};
};
/// Looking at a pour: its face as a map at a moment, a spot of it or a finding and its taps.
struct ReviewDraft {
  FaceKind kind = FaceKind::dose;
  Side side = Side::near_side;
  std::optional<Seconds> at{};  ///< on the pour's clock; none: as it stands
  std::optional<Spot> spot{};   ///< whose story is told
  std::string cause{};          ///< whose finding is told; empty: none
  std::size_t of = 0;           ///< which of the cause's findings
  int page = 0;
  int marks_page = 0;                   ///< of the table, to go back to
  std::optional<FindingsDraft> from{};  ///< the way back, where it was opened from there
  FilterDraft filter{};                 ///< of the marks
};
struct TrucksDraft {
  int page = 0;
};
/// Which bay concrete reaches, where bays are drawn too narrow for a finger.
struct BayStartDraft {
  int page = 0;
  Moment at{};  ///< when it was asked
};
struct NextDraft {
  int page = 0;
};
struct HolderDraft {
  int page = 0;
};
/// The plan changed under way: what of it, to what, and why.
struct AmendDraft {
  enum class Step { list, name, role, height, why, other };
  Step step = Step::list;
  int page = 0;
  std::string path{}, value{};             ///< of the plan (pour/plan/amend.h), JSON text
  PersonId person{};                       ///< whose role is asked for; of a new one its id
  bool fresh = false;                      ///< the person is new
  std::string text{}, typed{}, refused{};  ///< name or reason; height; why it would not stand
  Length stands{};                         ///< the height that is changed
  Moment at{};                             ///< when it was asked for
};
/// The walk-down: which page, and the point a note is being typed to.
struct ReadyDraft {
  int page = 0;
  std::optional<std::string> noting{};
  std::string text{};
};
/// What a new pour's plan is made from.
struct PlanFromDraft {
  int page = 0;
  std::string asked{};  ///< tapped once, though a plan is in the making
};
struct PlanPanel {};  ///< the plan being made is Drafts::plan: it outlives its panel
struct MoreDraft {};
struct SettingsDraft {};
/// The mirror's folder and copies by hand.
struct MirrorDraft {
  int page = 0;
  std::optional<Moment> looked{};       ///< for folders to choose from
  std::optional<std::string> typing{};  ///< the path of another one, so far
};
/// The record of a day to be made: which day, where to, in which forms.
struct RecordDraft {
  int days_back = 0;
  bool all_forms = false;
  std::string folder{};                 ///< empty: where the mirror is, else beside the book
  std::optional<std::string> typing{};  ///< the path of another folder, so far
  bool asked = false;                   ///< one was asked for since the panel was opened
};
struct CloseDraft {};
struct QuitDraft {};
/// What to look for in the list of pours.
struct FindDraft {
  std::string text{};
};
struct ElementsDraft {
  int page = 0;
};
/// Signing, or making the key to sign with. What was typed of a PIN is wiped with each step away.
struct SignDraft {
  enum class Step { who, verdict, pin, witness, witness_pin, new_pin, again, answer };
  Step step = Step::who;
  int page = 0;
  PersonId person{}, witness{};
  event::Role role = event::Role::foreman;
  bool enrolling = false;               ///< a key is made
  bool differs = false;                 ///< the new PIN was not typed the same twice
  bool asked = false;                   ///< for keys of earlier pours
  std::size_t verdict = 0;              ///< which of those offered
  std::string comment{};                ///< signed with it
  std::optional<std::string> typing{};  ///< the comment, while it is typed
  Secret pin{}, again{}, witness_pin{};
};

using AnyDialog =
    std::variant<std::monostate, PadDraft, CorrectDraft, TypeDraft, NoteDraft, HoldDraft, RowDraft,
                 GateDraft, ResumeDraft, TapsDraft, FindingsDraft, MoreDraft, SettingsDraft,
                 CloseDraft, QuitDraft, ElementsDraft, TrucksDraft, TruckDraft, TestDraft, AirDraft,
                 InsertDraft, NextDraft, HolderDraft, ReadyDraft, PlanFromDraft, PlanPanel,
                 FindDraft, MirrorDraft, BayStartDraft, InvertersDraft, SpeedDraft, PressureDraft,
                 AfterDraft, LoadDraft, SpecimensDraft, SpecimenDraft, SignDraft, RecordDraft,
                 RanEarlierDraft, ReviewDraft, StripDraft, MotorOutDraft, AmendDraft>;
using Dialog = MadeOnce<AnyDialog>;

/// A book that could not be opened: all the window shows then.
struct FailureDraft {
  BookTrouble trouble = BookTrouble::none;
  std::string file{};
  std::string text{};     ///< the same for the one who sets the tablet up, in English
  bool may_read = false;  ///< opening for reading only may do
};

/// What is odd about the wall clock at the first tap of a day.
enum class ClockDoubt { none, before_build, behind_book, ahead_of_book, far_ahead };
/// The question whether the clock is right stands over everything until it is answered.
struct ClockQuestion {
  ClockDoubt doubt = ClockDoubt::none;
  Moment against{};  ///< what the clock is held against
};

struct Drafts {
  std::size_t element = 0;  ///< which of the pour's elements is shown
  Dialog dialog{};
  int rows_page = 0;
  Side rows_side = Side::near_side;  ///< whose rows are shown where both sides have some
  int pours_page = 0;
  std::string pours_find{};        ///< of the list of pours only what this finds is shown
  std::optional<PlanEdit> plan{};  ///< begun and not yet opened as a pour
  bool plan_sent = false;          ///< START was tapped; kept until the pour is seen to be open
  bool figures = false;            ///< the keys show figures instead of letters
  int path_keys = 0;               ///< which page of keys a path is typed with
  bool wipe = false;               ///< asked for: the glass is to be locked for cleaning
  std::optional<FailureDraft> failure{};
  std::optional<ClockQuestion> clock{};
};

}  // namespace rb::screens

extern template struct rb::MadeOnce<rb::screens::AnyDialog>;
