// What the Pour screen shows, worked out from the state of the pour, the checker's report and the
// moment. No words and no pixels: made here, tested without a screen.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "check/check.h"
#include "pour/log/state.h"
#include "pour/outlook/gates.h"
#include "screens/view/after_view.h"
#include "screens/view/inverter_view.h"
#include "screens/view/lazy_list.h"
#include "screens/view/pressure_view.h"
#include "screens/view/ready_view.h"
#include "screens/view/review_view.h"
#include "screens/view/sign_view.h"
#include "screens/view/strip_view.h"
#include "screens/view/tap_filter.h"
#include "screens/view/truck_view.h"

namespace rb::screens {

/// How long a row has run for the lift, against the band it should reach.
enum class DoseWord { none, more, enough, over };

/// What the foreman should know before he starts a row.
enum class RowCaution { none, head_over, no_concrete, not_hung, cables_open, tripped };

struct MotorSpot {
  Length x{};
  bool hung = false;
  MotorId motor{};  ///< the plan's
};

struct RowView {
  std::size_t row = 0;  ///< index into the element's rows
  RowPlace place{};
  Length z{}, reach_low{}, reach_high{}, reach_left{}, reach_right{};
  std::vector<MotorSpot> spots{};         ///< from left to right
  bool serves_lift = false;               ///< the plan has it work for this lift
  std::optional<Moment> running_since{};  ///< none = at rest
  Seconds ran{};                          ///< for this lift, all its runs, up to now
  Seconds low{}, high{};                  ///< the band
  DoseWord word = DoseWord::none;
  Seconds to_go{};                 ///< until enough, or over by how much
  double counts = 1;               ///< what a second of it counts for, as it runs now
  std::optional<Pressure> head{};  ///< if it ran now, full liquid; none = nothing in reach
  bool head_about = false;         ///< reckoned from the last rise, above what was read
  std::optional<Pressure> rating{};
  RowCaution caution = RowCaution::none;
  bool hung = false, cables = false;
  std::vector<Gate> gates{};     ///< not in order for a run, and not gone on over by name
  RunWait wait = RunWait::none;  ///< none: a run is wanted, and only then RUN has its colour
  /// Its work for the lift waits for its motors, or for their cables.
  [[nodiscard]] bool work_waits() const {
    return serves_lift && !running_since &&
           (wait == RunWait::not_hung || (hung && !cables && wait == RunWait::none));
  }
  [[nodiscard]] bool run_wanted() const { return wait == RunWait::none && !running_since; }
};

struct LiftView {
  std::optional<int> placing{};         ///< the lift being placed
  int next = 1;                         ///< the lift a start would begin
  int planned = 0;                      ///< how many lifts the plan has
  std::optional<int> latest{};          ///< the lift started last: rows work for it
  std::optional<Moment> since{};        ///< when the lift being placed, or the last one, began
  std::optional<Length> planned_top{};  ///< of the lift being placed, or of the next
  Length low{}, high{};                 ///< lowest and highest bay, as measured
  std::optional<Moment> read_at{};      ///< the last reading
  std::optional<Velocity> rise{}, rise_limit{};
  std::vector<OpenGate> open{};     ///< not in order for a lift
  std::vector<Gate> gates{};        ///< of those what was not gone on over by name
  bool rise_unjudged = false;       ///< of a bay nobody said when it was begun: it may be more
  Length guess_top{}, guess_end{};  ///< what the number pad starts from
  Length ceiling{};                 ///< the form's height
  bool fast = false;
  bool no_rate = false;     ///< of rise holds the form under its rating
  bool near_limit = false;  ///< of rise
};

/// How a corrected tap was entered, and who changed it, when and why.
struct TapWas {
  Moment at{};       ///< as it was first entered
  Happening what{};  ///< the same
  std::string by{};  ///< name of who corrected it last
  Moment when{};
  std::string why{};                      ///< as somebody wrote it
  std::optional<event::Chosen> chosen{};  ///< the reason, where it was chosen
};
/// None: the event was never corrected.
std::optional<TapWas> tap_was(const PourState& state, EventRef ref);

/// One line of the last taps.
struct TapView {
  EventRef ref = 0;
  EventId id{};
  Moment at{};                   ///< when it happened
  std::optional<Moment> kept{};  ///< when it was safe in the book
  Seconds stepped{};             ///< the wall clock it is told by, ahead of the pour's
  Happening what{};
  bool struck = false, fixed = false, late = false, counts = true;
  Seconds uncertain{};                 ///< by how much its time may be off
  bool from_script = false;            ///< brought in, not tapped
  std::optional<Seconds> take_back{};  ///< how long one tap still takes it back
  bool may_correct = true;
  bool keeping = false;         ///< the disk has not answered yet
  std::optional<TapWas> was{};  ///< of one corrected or struck: how it was entered, who changed it
};

/// The taps, the latest first: each is put in words when it is looked at, for a pour has thousands
/// and a screen a few. Good as long as the state it is of.
class TapList {
 public:
  TapList() = default;
  TapList(const PourState& state, Moment now) : state_(&state), now_(now) {}
  [[nodiscard]] std::size_t size() const { return state_ == nullptr ? 0 : state_->taps.size(); }
  [[nodiscard]] bool empty() const { return size() == 0; }
  TapView operator[](std::size_t i) const;
  /// Of any event of the log.
  [[nodiscard]] TapView of(EventRef ref) const;
  /// The latest first.
  [[nodiscard]] std::vector<EventRef> filtered(const TapFilter& filter) const {
    return state_ == nullptr ? std::vector<EventRef>{} : filtered_taps(*state_, filter);
  }
  [[nodiscard]] FilterChoices choices() const {
    return state_ == nullptr ? FilterChoices{} : filter_choices(*state_);
  }
  /// As the plan has him, else the id.
  [[nodiscard]] std::string name_of(const PersonId& person) const;
  /// Whether one tap still takes any of them back.
  [[nodiscard]] bool any_to_take_back() const;
  /// So many of the pour's last events the disk has not answered yet.
  void keeping_last(std::size_t events) { keeping_ = events; }

 private:
  std::size_t keeping_ = 0;
  const PourState* state_ = nullptr;
  Moment now_{};
};

struct BayView {
  Length x0{}, x1{};
  Length standing{};              ///< measured
  Length lift_bottom{};           ///< where this lift began
  std::optional<Length> about{};  ///< reckoned from the last rise, never above the planned top
  bool ended = true;
  bool may_start = false;           ///< no concrete came to it yet in the lift being placed
  std::optional<Moment> started{};  ///< concrete came to it, and no top was read in it since
};

struct ElevationView {
  Length length{}, height{};
  std::vector<BayView> bays{};
  std::vector<Patch> openings{}, congested{};
  std::vector<Length> lifts{};        ///< planned tops
  std::optional<std::size_t> lift{};  ///< the planned lift being placed, index
};

struct ElementChoice {
  ElementId id{};
  ElementKind kind = ElementKind::wall;
  std::optional<int> placing{};
  int lifts_done = 0, planned = 0;
  int rows_running = 0;
  int rows_to_run = 0;  ///< not run as long as the plan asks for the lift placed last
};

/// A window of time in which something is reckoned to come.
struct WindowView {
  Moment earliest{}, likely{};
  std::optional<Moment> latest{};
};

/// A bay's open joint against the clock.
struct KnitView {
  std::size_t bay = 0;
  Moment by{};  ///< the earliest the concrete to be reached into sets
  bool gone = false;
};

/// A row to run now, from the plan.
struct RunNowView {
  RowPlace place{};
  Seconds to_go{};
  bool running = false;
  RunWait wait = RunWait::none;  ///< none, or why not yet: not_hung, head_over
};
/// Motors to move next, from the plan.
struct MoveView {
  struct From {
    RowPlace place{};
    std::size_t motors = 0;
    bool running = false;
  };
  RowPlace to{};
  int lift = 0;  ///< the first it will serve
  std::vector<From> from{};
  std::size_t down = 0;             ///< motors that hang nowhere now
  std::optional<WindowView> due{};  ///< when the concrete reaches the row
};

struct InsertView {
  int lift = 0;  ///< being placed, or placed last; 0 before the first
  std::optional<event::Insert> last{};
  event::Insert usual{};           ///< to start from where none was logged yet
  std::array<Length, 5> widest{};  ///< spacing, by group
};

struct HoldView {
  Moment since{};
  std::string reason{};                   ///< as somebody wrote it
  std::optional<event::Moving> moved{};   ///< what moved: told before a reason
  std::optional<event::Chosen> chosen{};  ///< the reason, where it was chosen
};

/// What an event's words must tell apart.
struct Naming {
  bool two_sides = false;  ///< rows of an element hang on both sides
  bool elements = false;   ///< there are several
};

/// Findings that need no hand now and are open all the same: seen, or of before.
struct OpenBehind {
  int stops = 0, mends = 0;
  std::optional<Finding> gravest{};  ///< none: nothing is open
};

struct PourView {
  std::string site{}, name{};
  Naming naming{};
  Units units = Units::si;
  std::size_t element = 0;
  ElementId element_id{};
  bool two_sides = false;  ///< rows hang on both sides: a row must name its side
  std::vector<ElementChoice> elements{};
  Moment now{};
  LiftView lift{};
  std::vector<RowView> rows{};       ///< from the top down, near before far
  TapList taps{};                    ///< the latest first
  std::vector<Finding> attention{};  ///< what needs a hand now; put in by who remembers (alarm.h)
  OpenBehind behind{};               ///< the same
  std::vector<NotJudged> not_judged{};  ///< and why: "nothing found" says nothing of it
  int stops = 0, mends = 0, notes = 0;
  std::optional<HoldView> hold{};
  std::optional<Moment> closed{};
  Seconds dose_min{90};            ///< a spot is to get
  std::optional<Moment> curing{};  ///< of the element, since
  ElevationView elevation{};
  std::vector<RunNowView> run_now{};
  std::vector<MoveView> moves{};     ///< the one wanted first at the front
  std::vector<KnitView> knit{};      ///< the one that sets first at the front
  std::optional<WindowView> full{};  ///< when the lift being placed reaches its planned top
  InsertView insert{};
  LazyList<TruckView> trucks{};
  LazyList<LoadView> loads{};          ///< the same trucks, part by part
  LazyList<StripView> strips{};        ///< the element's faces: near, far
  LazyList<FaceView> faces{};          ///< the same, as they were found once stripped
  LazyList<SpecimenView> specimens{};  ///< taken, as they were told
  LazyList<GroupView> review{};        ///< what was said of each cause of what was found
  std::optional<SignView> sign{};      ///< while somebody signs
  LazyList<InverterView> inverters{};  ///< as the plan's
  LazyList<Frequency> last_speeds{};   ///< inverters were set to, quick to set again
  LazyList<PressureView> pressures{};  ///< of the element, by bay that concrete has come to
  std::optional<Celsius> air{};        ///< measured last
  std::vector<ReadyLine> ready{};      ///< the walk-down
};

/// An open joint this near its setting is told beside the lift (our own choice).
inline constexpr Seconds kKnitSoon{3600};
/// A tap can be taken back by one more within this.
inline constexpr Seconds kTakeBack{10};

/// `element` is an index into the plan; too great a one shows the first. State and report are
/// looked at as long as the view is.
PourView make_pour_view(const PourState& state, const CheckReport& report, std::size_t element,
                        Moment now);
PourView make_pour_view(const PourState& state, CheckReport&& report, std::size_t element,
                        Moment now) = delete;

/// Marks the taps the disk has not answered yet: the last `count` of the pour's log.
void mark_keeping(PourView& view, const PourState& state, std::size_t count);

/// When the picture next changes by itself: the whole second while something runs, is placed or can
/// be taken back, else the whole minute.
Seconds next_change(const PourView& view);

}  // namespace rb::screens
