// The daily consolidation record: what one day's pours say, as plain values, ready to be written as
// PDF, XLSX, CSV, JSON or PNG. A pure function of the pours: no clock, no disk. A pour is shown
// whole on every day it touches. Times are UTC, lengths and the rest SI; the writers show them.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/moment.h"
#include "base/quantity.h"
#include "check/check.h"
#include "pour/log/state.h"
#include "pour/log/unread.h"
#include "record/model/dose_map.h"
#include "record/model/joint_line.h"
#include "record/model/photo_line.h"
#include "words/language.h"

namespace rb {

/// What the record says of the book it was drawn from.
struct BookFacts {
  std::string tag;
  std::string head_hash;  ///< of the newest event, in hexadecimal
  std::size_t events = 0;
  std::string damage{};         ///< of the whole book, plain sentences; empty: none known
  std::string looked{};         ///< what of the book was verified for this record, in words
  std::int64_t head_event = 0;  ///< number of the newest event, whose hash that is; 0: not known
  bool operator==(const BookFacts&) const = default;
};

/// One pour as it goes into the record. The state and the report must outlive the call only.
struct RecordInput {
  const PourState& state;
  const CheckReport& report;
  std::vector<SideDose> dose;  ///< what trade reckoned; no field, no fill in the picture
  Unread unread{};             ///< what the book kept of it and cannot give
  bool stories = false;        ///< tell what happened at each spot, for a page to touch
  PhotoSource photos{};        ///< gives photos' files; without it none is looked for
};

struct PersonLine {
  std::string id, name, role;
};
struct ElementLine {
  std::string element, kind;
  Length length, height, thickness;
  std::optional<Length> thickness_top;
  double batter_deg = 0;
  std::optional<Pressure> form_rating;
  std::optional<MassPerArea> form_mass;
  std::optional<Velocity> rise_limit;
  int bays = 0, lifts = 0, rows = 0;  ///< as planned
  std::string mixes;                  ///< by the trucks discharged into it
};
struct MixLine {
  std::string mix;
  UnitWeight unit_weight;
  Length slump;
  Seconds initial_set{};
  Celsius set_reference;
  std::string cement;
};
/// A limit the checker held the pour to.
struct LimitLine {
  std::string limit;
  Amount value;
  std::string from;
};
/// The most an element's form bore over the pour.
struct FormLine {
  std::string element;
  int bay = 0;  ///< from 1
  Pressure greatest;
  Length height;
  Moment at;
  std::string from;  ///< the running row, or the method
  std::optional<Pressure> rating;
};
struct ReadyLine {
  Moment at;
  std::string item;
  bool ok = false;
  std::string note, by;
};
struct AirLine {
  Moment at;
  Celsius temp;
  std::optional<double> humidity{};  ///< relative, per cent
  std::optional<Velocity> wind{};
};
struct HoldLine {
  Moment from;
  std::optional<Moment> to;
  std::string reason, by;
};
struct LiftLine {
  std::string element;
  int lift = 0;
  Moment placed_from, placed_to;
  Length top;  ///< highest bay
  std::optional<Velocity> rise_mean, rise_window, rise_limit;
  std::optional<double> under_share;
  std::optional<Seconds> min_dose, mean_dose;
};
struct RunLine {
  std::string element, side, row;
  std::optional<int> lift;  ///< begun last when the run began
  std::string by;
  Moment from;
  std::optional<Moment> to;  ///< none: no rest was logged
  std::optional<Seconds> ran;
  std::optional<Seconds> counts;  ///< of `ran`, slow seconds counting for less
  std::optional<Frequency> speed_low, speed;
  std::optional<Pressure> head;
  bool cables = false;
};
/// An inverter, and the most that ran on it at once.
struct PowerLine {
  std::string inverter;
  std::optional<std::size_t> motors{};
  std::optional<Moment> at{};
  std::optional<Current> amps{};  ///< in each phase
  Current gives{};
  std::optional<Current> trunk_amps{};  ///< through a trunk, when most went through it
  std::optional<double> lost{};         ///< of its volts on the way to a motor, the worst
  std::string cords{};                  ///< in words
  std::optional<ApparentPower> generator_takes{}, generator_gives{};
  std::string generator{};  ///< its name, and how it is derated
};
/// What was done at an inverter: a setting, or a trip.
struct SettingLine {
  Moment at;
  std::string inverter, what;
  std::optional<Frequency> speed{};
  std::optional<Potential> volts{};
  std::string by{};
};
struct MoveLine {
  std::string element, side, row, motors;
  Moment hung;
  std::optional<Moment> down;
  bool cables = false;
  std::string by;
};
struct InsertLine {
  Moment at;
  std::string element;
  int lift = 0;
  std::optional<int> bay;  ///< from 1; none = all
  int group = 0;
  Length spacing;
  Seconds each{};
  Length depth_below;
  std::string by;
};
/// One load; or one more test, or one more part, of the same load: then only the ticket and that
/// test's or part's fields stand.
struct TruckLine {
  std::string ticket, mix, element;
  std::optional<Volume> volume;
  std::optional<Volume> part;  ///< what of it went into the element, where that was told
  std::optional<Volume> water_added, returned;
  std::optional<Moment> batched, arrived, discharged, ended;
  std::optional<Seconds> age;  ///< from batching to the end of its discharge, or its start
  std::optional<Moment> tested;
  std::optional<Length> slump;
  std::optional<Celsius> temp;
  std::optional<double> air;  ///< per cent of the volume
  std::optional<MassPerVolume> density;
};
struct FindingLine {
  Severity severity = Severity::note;
  int cause = 0;      ///< from 1, in the order they are told
  int of_cause = 1;   ///< from 1: the first is the gravest of its cause
  std::string group;  ///< id of the cause, as `check --json` has it
  std::string title;  ///< of the rule, in words
  std::string place;  ///< "W1, lift 3, bay 2, row R4, far"
  std::string told;   ///< says, advice, source and review, a line each
  std::string rule, element, side, row;
  std::optional<int> lift, bay;  ///< from 1
  std::optional<Moment> from, to;
  std::optional<Amount> measured, limit;
  std::string measured_text, limit_text;  ///< in the record's units
  std::string says, source, advice;       ///< in the record's units
  std::string says_si;                    ///< as `check --json` has it
  std::string standing{};                 ///< open, accepted, sent-back: of its cause's group
  std::string figures{};                  ///< digest by which an acceptance holds
  std::string reviewed_by{}, reviewed_why{};
  std::optional<Moment> reviewed_at{};
};
struct CorrectionLine {
  Moment at;
  std::string by;
  std::string what;     ///< "changed" or "struck"
  std::string changes;  ///< in words: the event, and each field with its old and new value
  std::string why;
  std::string before, after;  ///< the script's lines; `after` empty when struck
};
struct LateLine {
  Moment at, entered;
  Seconds late{};
  std::string what, by;
};
/// A tap made while the tablet stood still, where nothing told when: its time may be off by this.
struct UncertainLine {
  Moment at;
  Seconds off_by{};
  std::string what, by;
};
/// An event that said nothing new and was set aside, or a step of the tablet's clock.
struct AsideLine {
  Moment at;
  std::string what, why;
};
/// An event of the pour that the book cannot give: damaged, or of a kind not known.
struct UnreadLine {
  std::string event, what;
};
struct NoteLine {
  Moment at;
  std::string by, element;
  std::optional<int> lift;
  std::string text;
};
struct CureLine {
  std::string element;
  Moment from;
  std::optional<Moment> to;
  std::string how, by;
};
struct ConcreteTempLine {
  Moment at;
  std::string element;
  std::optional<Length> z, x;
  Celsius temp;
  std::string by;
};
/// Of one place, by the readings in the record.
struct MaturityLine {
  std::string element;
  std::optional<Length> z, x;
  int readings = 0;
  Moment from, to;
  Seconds equivalent_age{};
  double nurse_saul = 0;  ///< degC h
  std::optional<Pressure> strength;
};
struct PermitLine {
  Moment at;
  std::string element, side, why, by;
};
struct SpecimenLine {
  std::string ticket, specimen;
  Moment taken;
  std::optional<Moment> broken;
  std::optional<Seconds> age;
  std::optional<Pressure> strength;
  std::string by;
};
struct StripLine {
  Moment at;
  std::string element, side, by;
};
struct BlemishLine {
  int number = 0;  ///< as drawn on the face's picture
  Moment at;
  std::string element, side, kind;
  Patch patch;
  std::string note, repairs, by;
};
/// A signature, or an empty line to sign by hand: then `at` is empty.
struct SignatureLine {
  std::string role, by, verdict, comment;
  std::optional<Moment> at;
  std::optional<int> after{};           ///< events of the pour that came after what was signed
  std::optional<int> after_changing{};  ///< of those, what may change what was signed
  /// Made with a key of the person's, whose ten letters these are; empty: a name and a word.
  std::string key{};
  std::string witness{};      ///< of the key's enrolment; "nobody" where there was none
  std::optional<int> open{};  ///< groups of findings it names as open
  std::string open_findings{};
  std::vector<std::string> told{};  ///< what it proves, and what came after it, in sentences
  // What it takes to hold the signature against the book (sign/claim.h).
  std::string public_key{}, signed_book{}, signed_hash{}, signature{};
  std::optional<int> signed_event{}, signed_events{};
};
/// A path of the plan that was amended while the pour went on.
struct AmendmentLine {
  Moment at;
  std::string path, was, value, why, by;  ///< in the reader's words
};

struct PourRecord {
  std::string id, site, name, method;
  std::optional<Moment> opened, closed;
  std::size_t events = 0;
  std::size_t from_script = 0;   ///< of the events: brought in from a script, not tapped
  std::size_t trucks = 0;        ///< loads that were discharged
  std::optional<Volume> placed;  ///< of their tickets; none when no ticket tells
  std::optional<Volume> net;     ///< below the top surface, openings out
  std::size_t causes_open = 0, causes_accepted = 0, causes_sent_back = 0;  ///< of findings
  std::vector<PersonLine> people;
  std::vector<ElementLine> elements;
  std::vector<MixLine> mixes;
  std::vector<LimitLine> limits;
  std::vector<ReadyLine> ready;
  std::vector<AirLine> air;
  std::vector<HoldLine> holds;
  std::vector<FormLine> forms;
  std::vector<LiftLine> lifts;
  std::vector<TopLine> tops;
  std::vector<JointLine> joints;
  std::vector<RunLine> runs;
  std::vector<PowerLine> power;
  std::vector<SettingLine> settings;
  std::vector<MoveLine> moves;
  std::vector<InsertLine> inserts;
  std::vector<TruckLine> loads;
  std::vector<FindingLine> findings;
  std::vector<std::string> not_judged;  ///< what the plan leaves unsaid
  std::vector<CorrectionLine> corrections;
  std::vector<LateLine> late;
  std::vector<UncertainLine> uncertain;
  std::vector<AsideLine> aside;
  std::vector<UnreadLine> damaged, set_aside;
  std::vector<NoteLine> notes;
  std::vector<CureLine> cures;
  std::vector<ConcreteTempLine> concrete_temps;
  std::vector<MaturityLine> maturities;
  std::vector<PermitLine> permits;
  std::vector<SpecimenLine> specimens;
  std::vector<StripLine> strips;
  std::vector<BlemishLine> blemishes;
  std::vector<PhotoLine> photos;  ///< those of a blemish together, in the blemishes' order
  std::vector<AmendmentLine> amendments;
  std::vector<SignatureLine> signatures;
  std::vector<DoseMap> dose_maps;
};

/// The record of the same day and book that was written before this one.
struct EarlierEdition {
  std::string file;
  std::string sha256;  ///< of that file, in hexadecimal; empty when it cannot be read
};

struct DailyRecord {
  int edition = 1;                          ///< numbered by what stands in the folder written to
  std::optional<EarlierEdition> earlier{};  ///< of the edition before
  Moment day{};                             ///< its start, local
  Moment day_end{};                         ///< when the next day starts
  std::chrono::minutes utc_offset{0};       ///< at its start; every time is told in it
  std::chrono::minutes utc_offset_end{0};   ///< at its end: another where clocks were changed
  Language language{};                      ///< of its reader
  Units units = Units::si;                  ///< of the first pour's plan; shown for all
  std::string site;
  BookFacts book;
  Moment as_of{};  ///< the newest moment any event tells of or was entered at
  std::vector<PourRecord> pours;
  std::vector<PourWithoutPlan> without_plan;  ///< pours of the book that cannot be shown
};

/// A local day: 23 or 25 hours where the clocks are changed on it.
struct LocalDay {
  Moment start{}, end{};                                  ///< `end` is the start of the next
  std::chrono::minutes utc_offset{0}, utc_offset_end{0};  ///< at its start and at its end
};
/// A day of 24 hours.
LocalDay plain_day(Moment start, std::chrono::minutes utc_offset);

/// Whether any event that still stands happened on the day.
bool touches(const PourState& state, const LocalDay& day);

/// The order of the pours is kept.
DailyRecord make_daily_record(const std::vector<RecordInput>& pours, const LocalDay& day,
                              BookFacts book, std::vector<PourWithoutPlan> without_plan = {},
                              Language language = {});
/// The same of a plain day that starts at `day` (parse_day).
DailyRecord make_daily_record(const std::vector<RecordInput>& pours, Moment day,
                              std::chrono::minutes utc_offset, BookFacts book,
                              std::vector<PourWithoutPlan> without_plan = {},
                              Language language = {});

/// "2026-03-02", "UTC-05:00".
std::string day_text(const DailyRecord& record);
std::string offset_text(std::chrono::minutes utc_offset);

/// The usual cautions, printed in every record; and each in a line. In English: keys of the
/// catalogues.
const std::vector<std::string>& record_cautions();
const std::vector<std::string>& short_cautions();

}  // namespace rb
