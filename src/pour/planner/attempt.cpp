#include "pour/planner/attempt.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "pour/outlook/form.h"
#include "pour/outlook/insertions.h"
#include "pour/planner/attempt_parts.h"
#include "pour/planner/deck.h"
#include "pour/planner/in_time.h"
#include "pour/planner/laid_out.h"
#include "pour/planner/most_runs.h"
#include "pour/planner/planned_vibrators.h"
#include "pour/planner/supply.h"
#include "pour/planner/wish_fault.h"
#include "trade/concrete/placing.h"
#include "trade/concrete/setting.h"
#include "trade/motors/sizing.h"
#include "trade/pressure/cited.h"

namespace rb {

namespace {

// A rate is planned this far under what is allowed: our own choice.
constexpr double kRiseKept = 0.10;
constexpr double kDoseTimesMost = 4;  // of the most of a dose a spot may get in all: the checker's
constexpr double kDoseKept = 0.02;    // of that, left for a run a little long: our own choice
constexpr Seconds kGap{30};           // between rows and before the next lift: our own choice

class Planner {
 public:
  Planner(const PlanWish& wish, Sizings& sizings, LastLoad last)
      : wish_(wish), sizings_(sizings), last_(last) {}

  Result<PlannedPour> plan() {
    if (auto fault = temperature_fault(wish_)) return Failed(*std::move(fault));
    for (const auto step : {&Planner::size, &Planner::dose, &Planner::pace, &Planner::feed,
                            &Planner::schedule, &Planner::knit, &Planner::loads}) {
      if (auto fault = (this->*step)()) return Failed(*std::move(fault));
    }
    use(PlanLimit::head, sized_.head / wish_.form_rating);
    std::stable_sort(p_.uses.begin(), p_.uses.end(),
                     [](const LimitUse& a, const LimitUse& b) { return a.share > b.share; });
    return std::move(p_);
  }

 private:
  using Fault = std::optional<Error>;
  void use(PlanLimit limit, double share) { p_.uses.push_back({limit, share}); }
  [[nodiscard]] const Element& element() const { return p_.plan.elements.front(); }
  [[nodiscard]] std::size_t sides() const { return wish_.both_sides ? 2 : 1; }
  // Of a reach along a battered form, how much of the height it covers.
  [[nodiscard]] double upright() const {
    return std::cos(wish_.batter_deg * std::numbers::pi / 180.0);
  }

  // Rows, lifts and motors.
  Fault size() {
    trade::SizingCase c;
    c.length = wish_.length;
    c.height = wish_.height;
    c.thickness = wish_.thickest();
    c.unit_weight = wish_.mix.unit_weight;
    c.form_mass = wish_.form_mass;
    c.motor = {wish_.motor.force, wish_.reach_x, wish_.reach_z, wish_.reach_pressure};
    c.rating = wish_.form_rating;
    c.knit_depth = wish_.limits.knit_depth.value;
    c.deepest_lift = wish_.deepest_lift;
    c.motor.reach_z = c.motor.reach_z * upright();
    if (c.motor.reach_pressure) c.motor.reach_pressure = *c.motor.reach_pressure * upright();
    const Result<trade::Sizing>* sized = &sizings_.of(c, trade::Leapfrog::ahead);
    if (!*sized) return sized->error();
    const auto motors_of = [&](const trade::Sizing& s) {
      return s.sets * s.motors.size() * sides();
    };
    calm_motors_ = motors_of(**sized);
    const auto too_many = [&] {
      return wish_.motors_at_hand && motors_of(**sized) > *wish_.motors_at_hand;
    };
    if (too_many()) sized = &sizings_.of(c, trade::Leapfrog::paused);
    if (!*sized) return sized->error();
    if (too_many()) {
      return refused(
          "motors",
          {sides() == 1 ? said("{there} are at hand; {rows} rows at a time of {motors} motors on 1 "
                               "side take {needed}")
                        : said("{there} are at hand; {rows} rows at a time of {motors} motors on 2 "
                               "sides take {needed}"),
           {{"there", counted(*wish_.motors_at_hand)},
            {"rows", counted((*sized)->sets)},
            {"motors", counted((*sized)->motors.size())},
            {"needed", counted(motors_of(**sized))}}},
          said("Get more motors, or ones that reach further"));
    }
    sized_ = **sized;
    p_.spacing = sized_.spacing;
    p_.force_share = sized_.force_share;
    p_.motors_a_row = sized_.motors.size();
    p_.motors = sized_.sets * sized_.motors.size() * sides();
    p_.motors_unmoved = sized_.rows.size() * sized_.motors.size() * sides();
    p_.insert_too = wish_.thickest() > kThinSection;
    lay_out();
    return std::nullopt;
  }

  void lay_out() {
    p_.plan.mixes.push_back(wish_.mix);
    p_.plan.elements.push_back(laid_out(wish_, sized_));
    p_.plan.motor_type = wish_.motor;
    p_.plan.limits = wish_.limits;
    p_.plan.pressure_method = wish_.method;
  }

  // The widest: trucks must keep up there.
  [[nodiscard]] Area plan_area() const {
    return trade::section_area(wish_.section, wish_.length, wish_.thickest());
  }

  // How fast a lift may rise, and what that presses.
  Fault pace() {
    trade::PressureCase c;
    c.shape = wish_.kind == ElementKind::column ? trade::FormShape::column : trade::FormShape::wall;
    c.unit_weight = wish_.mix.unit_weight;
    c.form_height = c.pour_height = wish_.height;
    c.temperature = wish_.concrete;
    c.slump = wish_.mix.slump;
    c.cement = wish_.mix.cement;
    c.set_time = planned_set(wish_.mix, wish_.concrete, SetSide::late);
    c.external_vibration = true;
    const auto allowed = trade::rise_for_rating(wish_.method, c, wish_.form_rating);
    const Pressure liquid = trade::full_liquid_head(c.unit_weight, c.pour_height);
    if (!allowed && allowed.error().kind == Error::Kind::input) return allowed.error();
    if (!allowed) {
      return refused("pressure",
                     {said("{why}; the form bears {rating} of the {liquid} of a full liquid head"),
                      {{"why", Clause{allowed.error().what}},
                       {"rating", amount(wish_.form_rating)},
                       {"liquid", amount(liquid)}}},
                     said("Ask the form designer for a form that bears the full liquid head"));
    }
    p_.rise_allowed = *allowed;
    if (p_.rise_allowed && *p_.rise_allowed <= Velocity{}) {
      return refused(
          "pressure",
          {said("the form's {rating} is no more than the least pressure {method} gives at any "
                "rate: no rise is allowed"),
           {{"rating", amount(wish_.form_rating)},
            {"method", std::string{trade::cited(wish_.method)}}}},
          said("Ask the form designer for a stronger form"));
    }
    p_.rise = wish_.rise_wished;
    const auto bound = [&](Velocity rate, PlanLimit limit) {
      if (rate >= p_.rise) return;
      p_.rise = rate;
      p_.sets_rise = limit;
    };
    if (wish_.rise_limit) bound(*wish_.rise_limit * (1 - kRiseKept), PlanLimit::rise_given);
    if (p_.rise_allowed) bound(*p_.rise_allowed * (1 - kRiseKept), PlanLimit::pressure);
    if (wish_.trucks_per_hour) {
      const trade::VolumeRate supply =
          trade::cubic_metres_per_hour(in_cubic_metres(wish_.load) * *wish_.trucks_per_hour);
      bound(supply / plan_area(), PlanLimit::trucks);
      use(PlanLimit::trucks, p_.rise * plan_area() / supply);
    }
    p_.placing = p_.rise * plan_area();
    if (wish_.rise_limit) use(PlanLimit::rise_given, p_.rise / *wish_.rise_limit);
    if (p_.rise_allowed) use(PlanLimit::pressure, p_.rise / *p_.rise_allowed);
    use(PlanLimit::rise_wished, p_.rise / wish_.rise_wished);
    const auto pressure = trade::method_pressure(wish_.method, c, p_.rise);
    p_.method_holds = pressure.has_value();
    p_.pressure = pressure.value_or(liquid);
    return std::nullopt;
  }

  // One inverter or more for each set of motors.
  Fault feed() {
    if (!wish_.inverter_amps) return std::nullopt;
    const double feeds = *wish_.inverter_amps / wish_.motor.amps + kHair;
    const auto each = static_cast<std::size_t>(std::min(feeds, 1e6));
    if (each == 0) {
      return refused(
          "power",
          {said("an inverter of {inverter} does not feed one motor of {motor}"),
           {{"inverter", amount(*wish_.inverter_amps)}, {"motor", amount(wish_.motor.amps)}}},
          said("Choose a larger inverter; a licensed electrician decides"));
    }
    for (std::size_t side = 0; side < sides(); ++side) {
      for (std::size_t set = 0; set < sized_.sets; ++set) {
        for (std::size_t place = 0; place < sized_.motors.size(); ++place) {
          if (place % each == 0) {
            p_.plan.power.push_back({InverterId{"I" + std::to_string(p_.plan.power.size() + 1)},
                                     wish_.volts,
                                     *wish_.inverter_amps,
                                     {},
                                     wish_.cable,
                                     wish_.trunk,
                                     wish_.generator,
                                     wish_.internal});
          }
          p_.plan.power.back().motors.push_back(planned_motor(sized_, side, set, place));
        }
      }
    }
    return std::nullopt;
  }

  [[nodiscard]] Seconds move_time() const {
    return wish_.hang_time * static_cast<double>(p_.motors_a_row) / static_cast<double>(wish_.crew);
  }

  // Between the least and the most of a dose; less where a spot within reach of many runs would
  // get more than it bears. Under the least it cannot be.
  Fault dose() {
    const double most = most_runs(sized_);
    const Limits& limits = wish_.limits;
    const Seconds least = limits.dose_min.value;
    const Seconds bears = limits.dose_max.value * kDoseTimesMost;
    run_ = std::max(
        least, std::min((least + limits.dose_max.value) / 2.0, bears * (1 - kDoseKept) / most));
    if (least * most <= bears) return std::nullopt;
    return refused("dose",
                   {said("a spot in reach of {runs} runs of {least} gets {dose}, over {limit}"),
                    {{"runs", count(most)},
                     {"least", amount(least)},
                     {"dose", amount(least * most)},
                     {"limit", amount(bears)}}},
                   said("Take motors that reach less far up, deeper lifts, or ask the engineer for "
                        "another dose"));
  }

  // Lift by lift: place, run the rows, insert; then when.
  Fault schedule() {
    const std::size_t rows = sized_.rows.size();
    const VolumeBelow below{element()};
    Length bottom;
    for (std::size_t i = 0; i < sized_.lifts.size(); ++i) {
      LiftStep step;
      step.lift = static_cast<int>(i) + 1;
      step.bottom = bottom;
      step.top = bottom = sized_.lifts[i];
      step.concrete = below.at(step.top) - below.at(step.bottom);
      step.place = Seconds{((step.top - step.bottom) / p_.rise).value()};
      step.run = run_;
      step.gap = kGap;
      for (std::size_t r = 0; r < rows; ++r) {
        const auto& lifts = sized_.rows[r].lifts;
        if (std::find(lifts.begin(), lifts.end(), step.lift) == lifts.end()) continue;
        for (std::size_t side = 0; side < sides(); ++side) step.rows.push_back(side * rows + r);
        const Length pressed = sized_.rows[r].pressed;
        step.head = std::max(step.head, wish_.mix.unit_weight * (step.top - pressed));
      }
      if (p_.insert_too) insert(step);
      p_.lifts.push_back(std::move(step));
    }
    const double busiest = put_in_time(p_, sized_, wish_);
    for (LiftStep& step : p_.lifts) {
      for (InsertStep& insert : step.inserts) {
        insert.fills = step.begins;
        insert.filled = insert.begins = step.begins + step.place;
      }
    }
    if (busiest > 0) use(PlanLimit::crew, busiest);
    for (const LiftStep& step : p_.lifts) {
      p_.concrete += step.concrete;
      p_.waits += step.pause;
    }
    if (p_.waits > Seconds{} && calm_motors_ > p_.motors) p_.motors_no_wait = calm_motors_;
    p_.duration = p_.lifts.back().rested();
    return std::nullopt;
  }

  // Points by the plan's own wants, and vibrators that keep up with the placing.
  void insert(LiftStep& step) {
    const Length spacing = planned_spacing(wish_.limits);
    for (std::size_t bay = 0; bay < element().bays.size(); ++bay) {
      const PointsWanted points =
          points_wanted(p_.plan, element(), bay, spacing, step.bottom, step.top);
      const auto rate = quantity_of<trade::VolumeRate>(
          element().volume(bay, step.bottom, step.top).value() / step.place.count());
      const double heads = std::ceil(rate / planned_vibrators().output.least - kHair);
      step.inserts.push_back({bay,
                              static_cast<int>(points.all()),
                              std::max(1, static_cast<int>(heads)),
                              {},
                              {},
                              {},
                              {}});
    }
  }

  // The joint under each lift must be knitted, its last row run, before its earliest part sets.
  Fault knit() {
    supply_ = supply_for(wish_, p_, last_);
    p_.sets = sets_from_coming(wish_, supply_);
    for (std::size_t i = 0; i + 1 < p_.lifts.size(); ++i) {
      const LiftStep& below = p_.lifts[i];
      const LiftStep& above = p_.lifts[i + 1];
      const double depth =
          std::min(1.0, double{wish_.limits.knit_depth.value / (below.top - below.bottom)});
      const Seconds age = below.takes() - below.place * (1 - depth) + above.takes() - above.pause;
      p_.joint_age = std::max(p_.joint_age, age);
    }
    use(PlanLimit::knit, p_.joint_age / p_.sets);
    if (p_.joint_age < p_.sets) return std::nullopt;
    const LiftStep& lift = p_.lifts.front();
    Saying why{
        said("a lift takes {takes} at {rise} and a joint is {age} old when it is knitted; it "
             "sets after {sets} at {concrete}"),
        {{"takes", amount(lift.takes(), Measure::long_span)},
         {"rise", amount(p_.rise)},
         {"age", amount(p_.joint_age, Measure::long_span), Rounding::up},
         {"sets", amount(p_.sets, Measure::long_span), Rounding::down},
         {"concrete", amount(wish_.concrete)}}};
    const auto longest =
        std::max_element(p_.lifts.begin(), p_.lifts.end(),
                         [](const LiftStep& a, const LiftStep& b) { return a.pause < b.pause; });
    if (longest->pause * 2.0 > longest->takes()) {
      const Amount move = amount(move_time() * static_cast<double>(sides()), Measure::age);
      why = beside(why, {said("{hands} hands take {move} to move a row's motors"),
                         {{"hands", count(wish_.crew)}, {"move", move}}});
      return refused("crew", why, said("Get more hands or more motors"));
    }
    Said remedy = said("Wish a faster rise, retard the mix, or pour in shorter parts");
    if (p_.sets_rise == PlanLimit::trucks) {
      why = beside(why, {said("{trucks} trucks an hour of {load} bring no more"),
                         {{"trucks", Amount{Measure::number, *wish_.trucks_per_hour}},
                          {"load", amount(wish_.load)}}});
      remedy = said("Bring more concrete, retard the mix, or pour a shorter length");
    } else if (p_.sets_rise == PlanLimit::pressure) {
      why = beside(why, {said("{method} allows {rise} on {rating}"),
                         {{"method", std::string{trade::cited(wish_.method)}},
                          {"rise", amount(*p_.rise_allowed), Rounding::down},
                          {"rating", amount(wish_.form_rating)}}});
      remedy = said("Ask the form designer for a stronger form, or pour the height in parts");
    }
    return refused("knit", why, remedy);
  }

  Fault loads() { return put_loads(p_, wish_, supply_); }

  const PlanWish& wish_;
  Sizings& sizings_;
  LastLoad last_;
  trade::Sizing sized_;
  Seconds run_{};
  std::size_t calm_motors_ = 0;  // with which no motor moves in a pause
  Supply supply_;
  PlannedPour p_;
};

}  // namespace

const Result<trade::Sizing>& Sizings::of(const trade::SizingCase& c, trade::Leapfrog leapfrog) {
  const std::pair key{in_metres(c.deepest_lift), leapfrog};
  const auto known = known_.find(key);
  if (known != known_.end()) return known->second;
  return known_.emplace(key, trade::size_rows(c, leapfrog)).first->second;
}

Result<PlannedPour> attempt(const PlanWish& wish, Sizings& sizings, LastLoad last) {
  if (auto fault = fault_of(wish)) return Failed(*std::move(fault));
  if (wish.kind == ElementKind::deck) return attempt_deck(wish, last);
  return Planner{wish, sizings, last}.plan();
}

}  // namespace rb
