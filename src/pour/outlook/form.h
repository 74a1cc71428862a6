// A pour's state as the engineering wants it: faces to be dosed, loads on the form, times to set.
// Still no rules: only what the plan and the events say, in trade's terms.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "base/result.h"
#include "pour/log/state.h"
#include "pour/outlook/set_clock.h"
#include "pour/plan/row_reach.h"
#include "trade/dose/dose.h"
#include "trade/pressure/pressure.h"

namespace rb {

/// The heaviest mix of the plan, or what was tested heavier by then: what a form is loaded with
/// when it is not known which it holds.
UnitWeight heaviest(const PourState& state, Seconds at);

/// A run that nobody rested counts as vibration to the next event of the pour only, whatever that
/// is, for nothing is known of it after; unless it still runs, and somebody may yet rest it. As
/// load on form and power it counts whole.
enum class Unended { runs_on, to_next_event, whole };
/// Until when a run counts, asked at a moment; never past its row's take-down or the
/// pour's close.
Seconds counts_until(const PourState& state, const RunState& run, Seconds at, Unended unended);

/// Visits a run cut where what it turned at changed, with what a second counts for: of the working
/// speed the square (trade/motors/force.h). Where nobody said, and where the plan tells no motor
/// type, a second counts whole.
void for_weighed(const PourState& state, const RunState& run, Seconds until,
                 const std::function<void(const trade::Interval&)>& visit);

/// When the places of a row shook: one running time a place, shared by places that shook alike.
using RowShaking = std::vector<trade::Running>;
/// By row of an element, up to a moment: the row's runs, where motors hung and their inverter had
/// not tripped. Runs of a row that was never logged as hung count for all its places.
std::vector<RowShaking> shaking(const PourState& state, std::size_t element, Seconds until,
                                Unended unended);

/// Sections thicker than this are judged by the worst side and want internal vibration.
inline constexpr Length kThinSection = metres(0.3);
/// Whether insertions judge an element's consolidation: nothing else works there, or the section is
/// too thick for rows alone.
inline bool by_insertions(const Element& element) {
  return element.rows.empty() || element.thickest() > kThinSection;
}

/// The sides of an element that have rows in the plan.
std::vector<Side> judged_sides(const Element& element);

/// An element as a face to be dosed, with the given sides, by all that was logged.
trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides);
trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    const std::vector<RowShaking>& shaken);
/// The same with set_steps() known.
trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    const std::vector<RowShaking>& shaken, std::vector<trade::SetStep> sets);

/// A motor at its place on an element; when it ran is left open.
trade::Shaker shaker_at(const Element& element, const Row& row, const Motor& motor);

/// A lift's concrete, bay by bay.
std::vector<trade::Band> lift_bands(const LiftState& lift);

/// The greatest depth of concrete over the lowest heights a row works on at a moment; zero where
/// there is none.
Length deepest_over(const std::vector<BayReached>& bays, const ElementState& element, Seconds at);

/// What the pressure method is asked with for an element at a moment: of what is planned and what
/// was tested by then the wettest, heaviest and coldest. Untested concrete is taken as cold as it
/// may come (the mix's temp_low, else the plan's least temperature).
trade::PressureCase pressure_case(const PourState& state, std::size_t element, Seconds at);

struct RiseLimit {
  Velocity rate;
  enum class From { plan, method } from = From::plan;
};
/// The lower of the plan's limit and the rate at which the method's pressure reaches the form's
/// rating. None: neither says anything. Where the method does not hold, only a full liquid head may
/// be reckoned with: no rate keeps a form under it that does not bear it.
std::optional<RiseLimit> rise_limit(const PourState& state, std::size_t element, Seconds at);

/// Concrete below the top surface, openings out.
Volume net_volume(const PourState& state, std::size_t element);

}  // namespace rb
