#include "pour/outlook/form.h"

#include "pour/outlook/row_shaking.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "pour/outlook/measured_set.h"
#include "trade/concrete/setting.h"

namespace rb {

namespace {

Seconds at_temperature(Seconds at_reference, const Mix& mix, Celsius temp) {
  return at_reference / trade::rate_factor(temp, {mix.set_reference, {}});
}

Seconds to_set(const Mix& mix, Celsius temp) {
  return at_temperature(mix.initial_set, mix, temp);
}

// The set times that readings gave, mix by mix; asked once.
class MeasuredSets {
 public:
  explicit MeasuredSets(const PourState& state) {
    if (state.penetrations.empty()) return;
    for (const Mix& mix : state.plan->mixes) sets_.push_back(measured_set(state, mix));
    first_ = state.plan->mixes.data();
  }
  [[nodiscard]] const MeasuredSet* of(const Mix& mix) const {
    if (sets_.empty()) return nullptr;
    const auto& set = sets_[static_cast<std::size_t>(&mix - first_)];
    return set ? &*set : nullptr;
  }
  [[nodiscard]] bool any() const { return !sets_.empty(); }

 private:
  const Mix* first_ = nullptr;
  std::vector<std::optional<MeasuredSet>> sets_;
};

// Readings count from when water met cement: the early side takes off how old the load was when it
// was all out.
Seconds to_set(const Mix& mix, Celsius temp, const MeasuredSet& measured, Seconds age,
               SetSide side) {
  if (side == SetSide::late) return at_temperature(measured.late, mix, temp);
  return std::max(Seconds{}, at_temperature(measured.early, mix, temp) - age);
}

Seconds age_of(const PourState& state, const TruckState& truck) {
  const Seconds out = truck.ended.value_or(*truck.discharged);
  return std::max(Seconds{}, out - state.told(*truck.ref, truck.what->batched));
}

}  // namespace

// A deck's rows shake it from underneath: at z = 0, upwards.
trade::Shaker shaker_at(const Element& element, const Row& row, const Motor& motor) {
  return {motor.x, row.z, motor.reach_x, reach_up(element, motor), {}};
}

const Mix& mix_at(const PourState& state, std::size_t element, Seconds at) {
  const Mix* mix = &state.plan->mixes.front();
  if (state.plan->mixes.size() == 1) return *mix;
  Seconds latest{};
  bool found = false;
  for (const TruckState& truck : state.trucks) {
    if (!truck.what || !truck.discharged || *truck.discharged > at) continue;
    if (truck.element && *truck.element != element) continue;
    if (found && *truck.discharged < latest) continue;
    if (const Mix* used = state.plan->find(truck.what->mix)) {
      mix = used;
      latest = *truck.discharged;
      found = true;
    }
  }
  return *mix;
}

Celsius concrete_temp(const PourState& state, std::size_t element, Seconds at) {
  auto test = std::upper_bound(state.tests.begin(), state.tests.end(), at,
                               [](Seconds m, const TestState& t) { return m < t.at; });
  while (test != state.tests.begin()) {
    --test;
    if (test->what.temp) return *test->what.temp;
  }
  return mix_at(state, element, at).set_reference;
}

std::vector<trade::SetStep> set_steps(const PourState& state, std::size_t element, SetSide side) {
  struct Change {
    Seconds at{};
    const Mix* mix = nullptr;  // none: the mix stays
    std::optional<Celsius> temp{};
    Seconds age{};  // of the load
  };
  constexpr Seconds kBefore{-1e12};
  const Plan& plan = *state.plan;
  const MeasuredSets measured{state};
  std::vector<Change> changes{{kBefore, &plan.mixes.front(), std::nullopt, {}}};
  std::optional<Celsius> measured_last;
  for (const TestState& test : state.tests) {
    if (!test.what.temp || test.what.temp == measured_last) continue;
    measured_last = test.what.temp;
    changes.push_back({test.at, nullptr, test.what.temp, {}});
  }
  if (plan.mixes.size() > 1 || measured.any()) {
    for (const TruckState& truck : state.trucks) {
      if (!truck.what || !truck.discharged || truck.element.value_or(element) != element) continue;
      if (const Mix* mix = plan.find(truck.what->mix)) {
        changes.push_back({*truck.discharged, mix, {}, age_of(state, truck)});
      }
    }
  }
  std::stable_sort(changes.begin(), changes.end(),
                   [](const Change& a, const Change& b) { return a.at < b.at; });
  std::vector<trade::SetStep> steps;
  const Mix* mix = nullptr;
  Seconds age{};
  std::optional<Celsius> temp;
  for (std::size_t i = 0; i < changes.size(); ++i) {
    if (changes[i].mix != nullptr) {
      mix = changes[i].mix;
      age = changes[i].age;
    }
    if (changes[i].temp) temp = changes[i].temp;
    if (i + 1 < changes.size() && changes[i + 1].at == changes[i].at) continue;
    const Celsius now = temp.value_or(mix->set_reference);
    const MeasuredSet* found = measured.of(*mix);
    const Seconds long_after =
        found == nullptr ? to_set(*mix, now) : to_set(*mix, now, *found, age, side);
    if (steps.empty() || steps.back().to_set != long_after) {
      steps.push_back({changes[i].at, long_after});
    }
  }
  return steps;
}

Seconds sets_at(const PourState& state, std::size_t element, Seconds came) {
  if (state.penetrations.empty()) {
    return came + to_set(mix_at(state, element, came), concrete_temp(state, element, came));
  }
  return came + trade::to_set(set_steps(state, element), came);
}

bool set_measured(const PourState& state, std::size_t element, Seconds came) {
  return MeasuredSets{state}.of(mix_at(state, element, came)) != nullptr;
}

UnitWeight heaviest(const Plan& plan) {
  UnitWeight most = plan.mixes.front().unit_weight;
  for (const Mix& mix : plan.mixes) most = std::max(most, mix.unit_weight);
  return most;
}

namespace {

// One run's time at the places of a pattern of hangs.
void shake(std::vector<trade::Interval>& shaken, const RunState& run, Seconds until,
           const std::vector<const HangState*>& hangs, std::size_t place) {
  Seconds from = run.from;
  const Seconds to = std::min(run.to.value_or(until), until);
  const auto add = [&](Seconds a, Seconds b) {
    if (b > a) shaken.push_back({a, b});
  };
  for (const HangState* hang : hangs) {
    const Seconds begin = std::max(hang->from, from);
    const Seconds end = std::min(hang->to.value_or(to), to);
    if (end <= begin) continue;
    add(from, begin);
    if (hang->places[place]) add(begin, end);
    from = end;
  }
  add(from, to);
}

// Places that hung together through all hangs shook together.
RowShaking shaking_of_row(const std::vector<const RunState*>& runs,
                          const std::vector<const HangState*>& hangs, std::size_t places,
                          Seconds until) {
  const auto alike = [&](std::size_t a, std::size_t b) {
    return std::all_of(hangs.begin(), hangs.end(),
                       [&](const HangState* hang) { return hang->places[a] == hang->places[b]; });
  };
  RowShaking row;
  std::vector<std::size_t> firsts;  // of each pattern
  for (std::size_t place = 0; place < places; ++place) {
    const auto known = std::find_if(firsts.begin(), firsts.end(),
                                    [&](std::size_t first) { return alike(first, place); });
    if (known != firsts.end()) {
      row.push_back(row[*known]);
      continue;
    }
    firsts.push_back(place);
    std::vector<trade::Interval> shaken;
    for (const RunState* run : runs) shake(shaken, *run, until, hangs, place);
    row.emplace_back(std::move(shaken));
  }
  return row;
}

}  // namespace

std::vector<RowShaking> shaking(const PourState& state, std::size_t element, Seconds until) {
  std::vector<RowShaking> shaken;
  for (std::size_t row = 0; row < state.elements[element].rows.size(); ++row) {
    shaken.push_back(shaking(state, element, row, until));
  }
  return shaken;
}

RowShaking shaking(const PourState& state, std::size_t element, std::size_t row, Seconds until) {
  return shaking_since(state, element, row, Seconds{-1e18}, until);
}

RowShaking shaking_since(const PourState& state, std::size_t element, std::size_t row,
                         Seconds since, Seconds until) {
  const RowState& there = state.elements[element].rows[row];
  std::vector<const RunState*> runs;
  std::vector<const HangState*> hangs;
  auto first = there.runs.end();  // one after the other
  while (first != there.runs.begin() && state.runs[*(first - 1)].to.value_or(until) > since) {
    --first;
  }
  for (; first != there.runs.end(); ++first) runs.push_back(&state.runs[*first]);
  for (const std::size_t hang : there.hangs) hangs.push_back(&state.hangs[hang]);
  const std::size_t places = state.plan->elements[element].rows[row].motors.size();
  return shaking_of_row(runs, hangs, places, until);
}

std::vector<Side> judged_sides(const Element& element) {
  std::vector<Side> sides;
  for (const Side side : {Side::near_side, Side::far_side}) {
    if (element.has_rows(side)) sides.push_back(side);
  }
  return sides;
}

trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    Seconds until) {
  return face_of(state, element, sides, shaking(state, element, until));
}

trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    const std::vector<RowShaking>& shaken) {
  return face_of(state, element, sides, shaken, set_steps(state, element));
}

trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    const std::vector<RowShaking>& shaken, std::vector<trade::SetStep> sets) {
  const Element& planned = state.plan->elements[element];
  trade::Face face{planned.bays, state.elements[element].tops,     planned.openings,
                   {},           planned.thickness > kThinSection, std::move(sets)};
  for (const Side side : sides) {
    std::vector<trade::Shaker>& shakers = face.sides.emplace_back();
    for (std::size_t r = 0; r < planned.rows.size(); ++r) {
      const Row& row = planned.rows[r];
      if (row.side != side) continue;
      for (std::size_t i = 0; i < row.motors.size(); ++i) {
        shakers.push_back(shaker_at(planned, row, row.motors[i]));
        shakers.back().running = shaken[r][i];
      }
    }
  }
  return face;
}

std::vector<trade::Band> lift_bands(const LiftState& lift) {
  std::vector<trade::Band> bands;
  for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
    bands.push_back({lift.bottom[bay], lift.top[bay]});
  }
  return bands;
}

std::vector<BayReached> bays_reached(const Element& element, std::size_t row) {
  std::vector<BayReached> reached;
  for (std::size_t bay = 0; bay < element.bays.size(); ++bay) {
    if (const auto low = lowest_in_bay(element, element.rows[row], bay)) {
      reached.push_back({bay, *low});
    }
  }
  return reached;
}

Length deepest_over(const std::vector<BayReached>& bays, const ElementState& element, Seconds at) {
  Length deepest;
  for (const BayReached& reached : bays) {
    deepest = std::max(deepest, element.tops[reached.bay].at(at) - reached.low);
  }
  return deepest;
}

Pressure head_on_row(const PourState& state, std::size_t element, std::size_t row, Seconds at) {
  const auto bays = bays_reached(state.plan->elements[element], row);
  return heaviest(*state.plan) * deepest_over(bays, state.elements[element], at);
}

Pressure head_on_row(const PourState& state, std::size_t element, std::size_t row,
                     const std::vector<Length>& tops) {
  Length deepest;
  for (const BayReached& reached : bays_reached(state.plan->elements[element], row)) {
    deepest = std::max(deepest, tops[reached.bay] - reached.low);
  }
  return heaviest(*state.plan) * deepest;
}

trade::PressureCase pressure_case(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const Mix& mix = mix_at(state, element, at);
  const Celsius temp = concrete_temp(state, element, at);
  trade::PressureCase c;
  c.shape = planned.kind == ElementKind::column ? trade::FormShape::column : trade::FormShape::wall;
  c.unit_weight = heaviest(*state.plan);
  c.form_height = planned.rise_height();
  c.pour_height = planned.rise_height();
  c.temperature = temp;
  c.slump = mix.slump;
  c.cement = mix.cement;
  c.set_time = to_set(mix, temp);
  if (const auto measured = measured_set(state, mix)) {  // the later it sets, the more it presses
    c.set_time = std::max(c.set_time, at_temperature(measured->late, mix, temp));
  }
  c.external_vibration = !planned.rows.empty();
  return c;
}

std::optional<RiseLimit> rise_limit(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  std::optional<RiseLimit> limit;
  if (planned.rise_limit) limit = RiseLimit{*planned.rise_limit, RiseLimit::From::plan};
  if (!planned.form_rating || planned.kind == ElementKind::deck) return limit;
  const trade::PressureCase c = pressure_case(state, element, at);
  const auto allowed = trade::rise_for_rating(state.plan->pressure_method, c, *planned.form_rating);
  std::optional<Velocity> rate;
  if (allowed) {
    rate = *allowed;
  } else if (trade::full_liquid_head(c.unit_weight, c.pour_height) > *planned.form_rating) {
    rate = Velocity{};
  }
  if (rate && (!limit || *rate < limit->rate)) limit = RiseLimit{*rate, RiseLimit::From::method};
  return limit;
}

Volume net_volume(const PourState& state, std::size_t element) {
  const Element& planned = state.plan->elements[element];
  Area area;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    const Length start = planned.bay_start(bay);
    const Length top = state.elements[element].tops[bay].standing();
    const Patch stands{start, {}, planned.bays[bay], top};
    area += stands.w * stands.h - trade::covered(planned.openings, stands);
  }
  // A deck's face is seen along its length; its height is how far it goes in from there.
  return area * (planned.kind == ElementKind::deck ? planned.height : planned.thickness);
}

}  // namespace rb
