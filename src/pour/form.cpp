#include "pour/form.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "trade/setting.h"

namespace rb {

namespace {

Seconds to_set(const Mix& mix, Celsius temp) {
  const double factor = trade::rate_factor(temp, {mix.set_reference, {}});
  return mix.initial_set / factor;
}

// On a battered face a motor's reach along the form covers less height.
Length reach_up(const Element& element, const Motor& motor) {
  return motor.reach_z * std::cos(element.batter_deg * std::numbers::pi / 180.0);
}

// A deck's rows shake it from underneath: at z = 0, upwards.
trade::Shaker shaker_at(const Element& element, const Row& row, const Motor& motor) {
  return {motor.x, row.z, motor.reach_x, reach_up(element, motor), {}};
}

}  // namespace

const Mix& mix_at(const PourState& state, std::size_t element, Seconds at) {
  const Mix* mix = &state.plan->mixes.front();
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
  std::optional<Celsius> temp;
  for (const TestState& test : state.tests) {  // in order of time
    if (test.at > at) break;
    if (test.what.temp) temp = test.what.temp;
  }
  return temp.value_or(mix_at(state, element, at).set_reference);
}

std::vector<trade::SetStep> set_steps(const PourState& state, std::size_t element) {
  constexpr Seconds kBefore{-1e12};
  std::vector<Seconds> changes{kBefore};
  for (const TestState& test : state.tests) {
    if (test.what.temp) changes.push_back(test.at);
  }
  if (state.plan->mixes.size() > 1) {
    for (const TruckState& truck : state.trucks) {
      if (truck.discharged) changes.push_back(*truck.discharged);
    }
  }
  std::sort(changes.begin(), changes.end());
  std::vector<trade::SetStep> steps;
  for (const Seconds from : changes) {
    const Seconds long_after =
        to_set(mix_at(state, element, from), concrete_temp(state, element, from));
    if (!steps.empty() && steps.back().from == from) steps.pop_back();
    if (steps.empty() || steps.back().to_set != long_after) steps.push_back({from, long_after});
  }
  return steps;
}

Seconds sets_at(const PourState& state, std::size_t element, Seconds came) {
  return came + to_set(mix_at(state, element, came), concrete_temp(state, element, came));
}

UnitWeight heaviest(const Plan& plan) {
  UnitWeight most = plan.mixes.front().unit_weight;
  for (const Mix& mix : plan.mixes) most = std::max(most, mix.unit_weight);
  return most;
}

std::vector<std::vector<trade::Interval>> shaking(const PourState& state, std::size_t element,
                                                  std::size_t row, Seconds until) {
  const std::size_t places = state.plan->elements[element].rows[row].motors.size();
  std::vector<std::vector<trade::Interval>> shaken(places);
  const auto shake = [&](std::size_t place, Seconds from, Seconds to) {
    if (to > from) shaken[place].push_back({from, to});
  };
  for (const RunState& run : state.runs) {
    if (run.element != element || run.row != row) continue;
    Seconds from = run.from;
    const Seconds to = std::min(run.to.value_or(until), until);
    for (const HangState& hang : state.hangs) {
      if (hang.element != element || hang.row != row) continue;
      const Seconds begin = std::max(hang.from, from);
      const Seconds end = std::min(hang.to.value_or(to), to);
      if (end <= begin) continue;
      for (std::size_t i = 0; i < places; ++i) {
        shake(i, from, begin);
        if (hang.places[i]) shake(i, begin, end);
      }
      from = end;
    }
    for (std::size_t i = 0; i < places; ++i) shake(i, from, to);
  }
  for (auto& spans : shaken) spans = trade::united(std::move(spans));
  return shaken;
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
  const Element& planned = state.plan->elements[element];
  trade::Face face{planned.bays, state.elements[element].tops,     planned.openings,
                   {},           planned.thickness > kThinSection, set_steps(state, element)};
  for (const Side side : sides) {
    std::vector<trade::Shaker>& shakers = face.sides.emplace_back();
    for (std::size_t r = 0; r < planned.rows.size(); ++r) {
      const Row& row = planned.rows[r];
      if (row.side != side) continue;
      auto shaken = shaking(state, element, r, until);
      for (std::size_t i = 0; i < row.motors.size(); ++i) {
        shakers.push_back(shaker_at(planned, row, row.motors[i]));
        shakers.back().running = std::move(shaken[i]);
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

Pressure head_on_row(const PourState& state, std::size_t element, std::size_t row, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const Row& hung = planned.rows[row];
  Length deepest;
  for (const Motor& motor : hung.motors) {
    const Length low = std::max(Length{}, hung.z - reach_up(planned, motor));
    for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
      const Length start = planned.bay_start(bay);
      const bool reached = motor.x + motor.reach_x > start + trade::kSamePlace &&
                           motor.x - motor.reach_x < start + planned.bays[bay] - trade::kSamePlace;
      if (!reached) continue;
      deepest = std::max(deepest, state.elements[element].tops[bay].at(at) - low);
    }
  }
  return heaviest(*state.plan) * deepest;
}

Pressure head_of_run(const PourState& state, const RunState& run, Seconds until) {
  return head_on_row(state, run.element, run.row, run.to.value_or(until));
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
  if (planned.kind == ElementKind::deck) {
    Volume volume;
    for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
      volume += planned.bays[bay] * planned.height * state.elements[element].tops[bay].standing();
    }
    for (const Patch& p : planned.openings) volume -= p.w * planned.height * p.h;
    return std::max(volume, Volume{});
  }
  Area area;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    const Length start = planned.bay_start(bay);
    const Length end = start + planned.bays[bay];
    const Length top = state.elements[element].tops[bay].standing();
    area += planned.bays[bay] * top;
    for (const Patch& p : planned.openings) {
      const Length wide = std::min(end, p.x + p.w) - std::max(start, p.x);
      const Length high = std::min(top, p.z + p.h) - p.z;
      if (wide > Length{} && high > Length{}) area -= wide * high;
    }
  }
  return area * planned.thickness;
}

}  // namespace rb
