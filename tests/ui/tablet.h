// A tablet without glass: the real screens, a book in memory and a clock moved by hand. Taps by
// what is written on a button.
#pragma once

#include <string>
#include <vector>

#include "check/check.h"
#include "pour/log/event_json.h"
#include "pour/log/fold.h"
#include "pour/log/script.h"
#include "screens/book/ui.h"
#include "screens/glass/scale.h"

namespace rb::test {

struct TabletSpec {
  int width = 1280, height = 800;
  screens::Settings settings{};
};

class Tablet {
 public:
  /// Opens straight into the pour that the events open.
  Tablet(std::vector<Event> events, Moment now, TabletSpec spec = {});
  /// The same tablet with other events, nothing open: spares making the fonts anew.
  void restart(std::vector<Event> events, Moment now);

  /// Taps the one button on which this is written (whole words, in order). Fails the test when
  /// there is none, or more than one.
  void tap(const std::string& words);
  void tap_id(const std::string& id);
  void tap_at(screens::Point at, Seconds held = Seconds{0.08});
  void touch(screens::Touch::Kind kind, screens::Point at);
  /// One touch with its own time; the press it ended.
  std::optional<screens::Press> feed(const screens::Touch& touch);
  /// The loop stood still just before.
  void stand(const screens::Stall& stall);
  /// Opens the glass that is locked for cleaning, as a hand does.
  void unlock();
  void type(const std::string& letters);
  void escape();
  void wait(Seconds span);
  void frame();

  [[nodiscard]] bool says(const std::string& words) const;  ///< anywhere on the screen
  [[nodiscard]] const screens::SeenTarget* find(const std::string& words) const;
  [[nodiscard]] const screens::SeenTarget* find_id(const std::string& id) const;
  [[nodiscard]] std::vector<std::string> written() const;  ///< on every target

  [[nodiscard]] screens::Scale scale() const;
  [[nodiscard]] screens::Box glass() const;

  screens::Ui ui;
  std::vector<Event> events;
  std::vector<screens::Intent> others;        ///< what was wanted besides events
  std::optional<screens::PhotosSeen> photos;  ///< none: the book is only read
  std::optional<PourState> state;
  CheckReport report;
  std::vector<screens::PourCard> pours;
  Moment now;
  bool in_pour = true;
  bool checking = true;   ///< false: findings are not worked out, for tests of many taps
  bool refusing = false;  ///< true: what is not admissible is told as trouble, as the program does
  int taps = 0;
  int wanted = 0;   ///< events the screens asked to keep
  int refused = 0;  ///< of those, refused with words
  Seconds last_change{};
  std::optional<Severity> last_tone{};         ///< sounded last
  std::optional<screens::Press> last_press{};  ///< the press the last frame's touch ended

 private:
  void run(const screens::UiInput& input);
  void keep(const screens::KeepEvent& wish);
  void open_pour(const screens::OpenPour& wish);
  [[nodiscard]] screens::UiInput input() const;
  void refold();
  TabletSpec spec_;
  std::optional<screens::Trouble> trouble_;
};

/// The events of a kind that a tablet holds, in order.
template <class Kind>
std::vector<Kind> kept(const Tablet& tablet) {
  std::vector<Kind> all;
  for (const Event& event : tablet.events) {
    if (const auto* kind = std::get_if<Kind>(&event.what)) all.push_back(*kind);
  }
  return all;
}
/// Figures typed on a pad.
void keys(Tablet& tablet, const std::string& what);

/// Whether a rule speaks in what the tablet found.
bool has(const Tablet& tablet, const std::string& rule);

/// The events of a pour script up to a moment, with the ids and entries a book would give them.
std::vector<Event> events_of(const std::string& path, Moment until);
/// A pour opened with a small plan: a wall of two bays, three lifts, rows R1 and R2.
std::vector<Event> small_pour(Moment at);
/// The same with the walk-down answered and the mix measured: nothing is in the way of a lift.
std::vector<Event> ready_pour(Moment at);
/// The same with every row hung, its cables fixed.
std::vector<Event> hung_pour(Moment at);
/// Every row of the plan hung after the other events, its cables fixed.
std::vector<Event> hung(std::vector<Event> events);
/// Events put after the opening so that nothing is in the way of a lift.
std::vector<Event> in_order(std::vector<Event> events);
/// In the small pour, by taps: both rows hung, then lift 1 placed in a quarter of an hour.
void place_lift_1(Tablet& tablet, const std::vector<std::string>& hung = {"R1", "R2"});

}  // namespace rb::test
