#include "pour/planner/deck.h"

#include <algorithm>
#include <cmath>

#include "pour/outlook/insertions.h"
#include "pour/planner/attempt_parts.h"
#include "pour/planner/laid_out.h"
#include "pour/planner/planned_vibrators.h"
#include "trade/motors/sizing.h"

namespace rb {

namespace {

constexpr Seconds kAtAPoint{10};  // the middle of trade::kInsertTime: our own choice

class DeckPlanner {
 public:
  DeckPlanner(const PlanWish& wish, LastLoad last) : wish_(wish), last_(last) {}

  Result<PlannedPour> plan() {
    if (auto fault = temperature_fault(wish_)) return Failed(*std::move(fault));
    lay_out();
    pace();
    schedule();
    if (auto fault = knit()) return Failed(*std::move(fault));
    if (auto fault = put_loads(p_, wish_, supply_)) return Failed(*std::move(fault));
    std::stable_sort(p_.uses.begin(), p_.uses.end(),
                     [](const LimitUse& a, const LimitUse& b) { return a.share > b.share; });
    return std::move(p_);
  }

 private:
  [[nodiscard]] const Element& element() const { return p_.plan.elements.front(); }

  void lay_out() {
    trade::Sizing layers;
    const double many = std::max(1.0, std::ceil(wish_.thickness / wish_.deepest_lift - kHair));
    for (double i = 1; i < many; ++i) {
      const Length top = wish_.thickness * (i / many);
      layers.lifts.push_back(metres(std::round(in_metres(top) * 1000) / 1000));
    }
    layers.lifts.push_back(wish_.thickness);
    p_.plan.mixes.push_back(wish_.mix);
    p_.plan.elements.push_back(laid_out(wish_, layers));
    p_.plan.elements.front().form_rating.reset();  // it bears the deck's weight, nothing sideways
    p_.plan.limits = wish_.limits;
    p_.plan.pressure_method = wish_.method;
    p_.insert_too = true;
    Length bottom;
    for (const Length& top : layers.lifts) {
      LiftStep step;
      step.lift = static_cast<int>(p_.lifts.size()) + 1;
      step.bottom = bottom;
      step.top = bottom = top;
      for (std::size_t bay = 0; bay < element().bays.size(); ++bay) {
        step.concrete += element().volume(bay, step.bottom, step.top);
      }
      p_.concrete += step.concrete;
      p_.lifts.push_back(std::move(step));
    }
  }

  [[nodiscard]] double heads() const { return wish_.crew; }

  [[nodiscard]] InsertStep points_of(const LiftStep& step, std::size_t bay) const {
    const PointsWanted points = points_wanted(p_.plan, element(), bay,
                                              planned_spacing(wish_.limits), step.bottom, step.top);
    InsertStep insert;
    insert.bay = bay;
    insert.points = static_cast<int>(points.all());
    insert.heads = wish_.crew;
    const Limits& limits = wish_.limits;
    const Seconds each =
        std::max(limits.insert_least.value, std::min(kAtAPoint, limits.insert_most.value)) +
        kNextPoint;
    insert.takes = each * std::ceil(points.all() / heads() - kHair);
    return insert;
  }

  // No faster than the vibrators consolidate, by the group's least output and by the points there
  // are, nor than trucks bring.
  void pace() {
    const trade::VolumeRate vibrators = planned_vibrators().output.least * heads();
    p_.placing = vibrators;
    p_.sets_rise = PlanLimit::vibrators;
    for (LiftStep& step : p_.lifts) {
      for (std::size_t bay = 0; bay < element().bays.size(); ++bay) {
        step.inserts.push_back(points_of(step, bay));
        const Volume fills = element().volume(bay, step.bottom, step.top);
        p_.placing = std::min(p_.placing, quantity_of<trade::VolumeRate>(
                                              fills.value() / step.inserts.back().takes.count()));
      }
    }
    const trade::VolumeRate may = p_.placing;
    if (wish_.trucks_per_hour) {
      const trade::VolumeRate supply =
          trade::cubic_metres_per_hour(in_cubic_metres(wish_.load) * *wish_.trucks_per_hour);
      if (supply < p_.placing) {
        p_.placing = supply;
        p_.sets_rise = PlanLimit::trucks;
      }
      p_.uses.push_back({PlanLimit::trucks, p_.placing / supply});
    }
    p_.uses.push_back({PlanLimit::vibrators, p_.placing / may});
  }

  [[nodiscard]] Seconds placing(Volume volume) const {
    return Seconds{volume.value() / p_.placing.value()};
  }

  // The vibrators follow the front a bay behind; the next layer begins when they are done.
  void schedule() {
    Seconds now{};
    for (LiftStep& step : p_.lifts) {
      step.begins = now;
      step.place = placing(step.concrete);
      Seconds inserted = now;
      for (InsertStep& insert : step.inserts) {
        insert.fills = now;
        now += placing(element().volume(insert.bay, step.bottom, step.top));
        insert.filled = now;
        insert.begins = std::max(now, inserted);
        inserted = insert.begins + insert.takes;
      }
      step.inserting = inserted - (step.begins + step.place);
      now = step.rested();
      p_.rise = std::max(
          p_.rise, quantity_of<Velocity>((step.top - step.bottom).value() / step.place.count()));
    }
    p_.duration = now;
  }

  // Each bay is inserted, into the layer under it and along the bay beside it, before what came
  // first there sets.
  std::optional<Error> knit() {
    supply_ = supply_for(wish_, p_, last_);
    p_.sets = sets_from_coming(wish_, supply_);
    for (std::size_t i = 0; i < p_.lifts.size(); ++i) {
      const auto& inserts = p_.lifts[i].inserts;
      for (std::size_t bay = 0; bay < inserts.size(); ++bay) {
        const Seconds done = inserts[bay].begins + inserts[bay].takes;
        if (bay > 0) p_.joint_age = std::max(p_.joint_age, done - inserts[bay - 1].fills);
        if (i > 0) {
          p_.joint_age = std::max(p_.joint_age, done - p_.lifts[i - 1].inserts[bay].fills);
        }
      }
    }
    p_.uses.push_back({PlanLimit::knit, p_.joint_age / p_.sets});
    if (p_.joint_age < p_.sets) return std::nullopt;
    const LiftStep& layer = p_.lifts.front();
    Saying why{
        said("a layer of the deck takes {takes} at {rate} and a joint is {age} old when it is "
             "worked; it sets after {sets} at {concrete}"),
        {{"takes", amount(layer.takes(), Measure::long_span)},
         {"rate", Amount{Measure::placing, trade::in_cubic_metres_per_hour(p_.placing)}},
         {"age", amount(p_.joint_age, Measure::long_span), Rounding::up},
         {"sets", amount(p_.sets, Measure::long_span), Rounding::down},
         {"concrete", amount(wish_.concrete)}}};
    if (p_.sets_rise == PlanLimit::trucks) {
      why = beside(why, {said("{trucks} trucks an hour of {load} bring no more"),
                         {{"trucks", Amount{Measure::number, *wish_.trucks_per_hour}},
                          {"load", amount(wish_.load)}}});
    } else {
      why = beside(
          why, {said("{heads} internal vibrators work no faster"), {{"heads", count(wish_.crew)}}});
    }
    return refused("knit", why,
                   said("Bring more concrete and more vibrators, retard the mix, take narrower "
                        "bays, or pour a smaller deck"));
  }

  const PlanWish& wish_;
  LastLoad last_;
  Supply supply_;
  PlannedPour p_;
};

}  // namespace

Result<PlannedPour> attempt_deck(const PlanWish& wish, LastLoad last) {
  return DeckPlanner{wish, last}.plan();
}

}  // namespace rb
