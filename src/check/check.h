// The checker: every rule over the state of a pour. Pure; takes the moment it is asked at.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "check/finding.h"

namespace rb {

/// The moment a check is made for. A finished look judges all that was logged; a live one leaves
/// out what can still be put right by going on (a lift whose rows have yet to run).
struct AsOf {
  Seconds at{};  ///< on the pour's clock
  bool live = false;
  static AsOf end(const PourState& state) { return {state.last, false}; }
  static AsOf now(const PourState& state, Moment now) { return {state.clock(now), true}; }
};

/// Shares and rates of one lift, as the record shows them. None = cannot be judged.
struct LiftReport {
  std::size_t element = 0;
  std::size_t index = 0;  ///< into ElementState::lifts
  int lift = 0;
  Seconds placed_from{}, placed_to{};
  Length top;  ///< highest bay
  std::optional<Velocity> rise_mean, rise_window, rise_limit;
  /// Of bays that concrete came to nobody knows when: as drawn; they rose at least so fast.
  std::optional<Velocity> rise_at_least;
  std::optional<double> under_share;
  std::optional<Seconds> min_dose, mean_dose;
  bool operator==(const LiftReport&) const = default;
};

struct RunReport {
  std::size_t run = 0;       ///< into PourState::runs
  Pressure head;             ///< full liquid as far down as it presses, the greatest while it ran
  bool in_concrete = false;  ///< some concrete stood in the row's reach then
  bool operator==(const RunReport&) const = default;
};

/// The most that ran at once on an inverter and, where it has one, on its trunk. Its internal
/// vibrators count while any motor runs there.
struct PowerReport {
  struct Most {
    Seconds from{}, to{};
    std::size_t motors = 0;
    Current amps;
    bool operator==(const Most&) const = default;
  };
  std::size_t inverter = 0;  ///< into Plan::power
  Most all;
  std::optional<Most> trunk{};
  Potential volts{};  ///< as set by then, else the plan's
  /// Share of the volts lost on the way to a motor, the worst. None: no cord is given, or all.
  std::optional<double> lost{};
  bool lost_all = false;  ///< or the cord cannot be reckoned with
  bool operator==(const PowerReport&) const = default;
};
/// The most that ran at once on a generator.
struct GeneratorReport {
  std::vector<std::size_t> inverters;  ///< into Plan::power; never empty
  Seconds from{}, to{};
  std::size_t motors = 0;
  ApparentPower takes, gives;
  bool operator==(const GeneratorReport&) const = default;
};

/// What is not judged, and why. No finding, for nothing was found; but "nothing found" must not be
/// read where nothing was looked at.
struct NotJudged {
  std::string what;  ///< "head", "power", "ready", "curing": its own stable id
  std::optional<std::size_t> element{}, bay{};  ///< indices into the plan
  std::optional<int> lift{};
  const char* sentence = "";  ///< in English; may name the element or the inverter
  std::optional<InverterId> inverter{};
};

struct CheckReport {
  AsOf asof;
  /// Those of one cause together, the gravest of them first; causes in the order of their first: by
  /// severity, then harm, then cost, then time.
  std::vector<Finding> findings;
  std::vector<LiftReport> lifts;
  std::vector<RunReport> runs;
  std::vector<NotJudged> not_judged;
  std::vector<PowerReport> power{};  ///< of inverters that something ran on
  std::vector<GeneratorReport> generators{};
  [[nodiscard]] bool clean() const;  ///< no finding of severity stop or mend
};

/// Findings of a report cause by cause.
std::vector<std::span<const Finding>> by_cause(std::span<const Finding> findings);

CheckReport check(const PourState& state, AsOf asof);

/// What a check worked out, kept for the next: after one more event only what the event touches is
/// worked out anew. Holds answers beside all that they depend on and gives them only for equal
/// questions, so that any state may follow any other; another plan empties it.
class CheckMemory {
 public:
  CheckMemory();
  ~CheckMemory();
  CheckMemory(CheckMemory&&) noexcept;
  CheckMemory& operator=(CheckMemory&&) noexcept;

  struct Inside;
  [[nodiscard]] Inside& inside() { return *inside_; }

 private:
  std::unique_ptr<Inside> inside_;
};

/// The same report as without a memory, sooner.
CheckReport check(const PourState& state, AsOf asof, CheckMemory& memory);

/// `check --json` of the design: SI, unrounded, RFC 3339 UTC, absent = null.
std::string to_json(const PourState& state, const CheckReport& report);
/// The same for a person at a terminal.
std::string to_text(const PourState& state, const CheckReport& report);

/// What the plan leaves unsaid: a form without a rating, inverters without their motors' amps.
std::vector<NotJudged> not_judged(const Plan& plan);
/// The same, and what nobody logged, once concrete is placed: no walk-down, no loads, no speeds.
std::vector<NotJudged> not_judged(const PourState& state);

/// Who or what is hurt by what a rule guards against: of two stops people's comes first.
enum class Harm {
  work,    ///< rework
  people,  ///< somebody may be hurt
  now,     ///< something gives way: clear the area
};

/// What it costs, of findings as grave the worst first: what can never be put right comes before
/// what is to be found and mended, and that before what shows on the face alone.
enum class Cost {
  lasting,  ///< it stays so: somebody has to decide what the work is worth
  inside,   ///< concrete that was not consolidated right through
  perhaps,  ///< something done or left undone that may have led to it
  face,     ///< to be looked at when stripped
  paper,    ///< the log alone
};

/// What a finding waits for, besides work on the form.
enum class Asks {
  nothing,
  joint_decision,  ///< how the joint it names is to be treated: event::Joint
};

/// One rule as the list shows it.
struct RuleCard {
  const char* id;
  const char* title;  ///< a few words: what is wrong
  Severity severity;
  Cost cost;
  const char* guards;      ///< what it guards against
  const char* source;      ///< clause, "common practice, no source" or "from memory"
  const char* limit;       ///< default limit and where it is set
  const char* changed_by;  ///< who may change the limit
  const char* advice;      ///< what the foreman should do
  Harm harm = Harm::work;
  Asks asks = Asks::nothing;
};
/// The card of a rule, by its id; none: no such rule.
const RuleCard* find_card(std::string_view rule);
std::span<const RuleCard> rule_cards();

}  // namespace rb
