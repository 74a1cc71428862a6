#include "pour/outlook/form.h"

#include "pour/log/log_entry.h"
#include "pour/outlook/loads.h"
#include "pour/outlook/row_shaking.h"

#include <algorithm>
#include <functional>
#include <numbers>

#include "pour/outlook/measured_set.h"
#include "trade/motors/force.h"

namespace rb {

// A deck's rows shake it from underneath: at z = 0, upwards.
trade::Shaker shaker_at(const Element& element, const Row& row, const Motor& motor) {
  return {motor.x, row.z, motor.reach_x, reach_up(element, motor), {}};
}

UnitWeight heaviest(const PourState& state, Seconds at) {
  UnitWeight most = state.plan->mixes.front().unit_weight;
  for (const Mix& mix : state.plan->mixes) most = std::max(most, mix.unit_weight);
  for (const TestState& test : state.tests) {
    if (test.at > at) break;
    if (test.what.density)
      most = std::max(most, quantity_of<UnitWeight>(in_kilograms_per_m3(*test.what.density) *
                                                    kStandardGravity));
  }
  return most;
}

namespace {

// A stretch of a run that turned alike, at the places of a pattern of hangs.
void shake(std::vector<trade::Interval>& shaken, const trade::Interval& run,
           const std::vector<const HangState*>& hangs, std::size_t place) {
  Seconds from = run.from;
  const Seconds to = run.to;
  const auto add = [&](Seconds a, Seconds b) {
    if (b > a) shaken.push_back({a, b, run.work});
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

struct RunPiece {
  trade::Interval when;
  const RunState* run = nullptr;
};

// Places that hung together through all hangs, and stood still together, shook together.
RowShaking shaking_of_row(const Plan& plan, const Row& planned, const std::vector<RunPiece>& runs,
                          const std::vector<const HangState*>& hangs) {
  const auto stopped = [&](const RunTrip& trip, std::size_t place) {
    return feeds(plan.power[trip.inverter], planned.motors[place].id);
  };
  std::vector<const RunState*> tripped;
  for (const RunPiece& piece : runs) {
    if (!piece.run->trips.empty()) tripped.push_back(piece.run);
  }
  const auto alike = [&](std::size_t a, std::size_t b) {
    return std::all_of(hangs.begin(), hangs.end(),
                       [&](const HangState* hang) { return hang->places[a] == hang->places[b]; }) &&
           std::all_of(tripped.begin(), tripped.end(), [&](const RunState* run) {
             return std::all_of(run->trips.begin(), run->trips.end(), [&](const RunTrip& trip) {
               return stopped(trip, a) == stopped(trip, b);
             });
           });
  };
  RowShaking row;
  std::vector<std::size_t> firsts;  // of each pattern
  for (std::size_t place = 0; place < planned.motors.size(); ++place) {
    const auto known = std::find_if(firsts.begin(), firsts.end(),
                                    [&](std::size_t first) { return alike(first, place); });
    if (known != firsts.end()) {
      row.push_back(row[*known]);
      continue;
    }
    firsts.push_back(place);
    std::vector<trade::Interval> shaken;
    for (const RunPiece& piece : runs) {
      trade::Interval when = piece.when;
      for (const RunTrip& trip : piece.run->trips) {
        if (stopped(trip, place)) when.to = std::min(when.to, trip.at);
      }
      shake(shaken, when, hangs, place);
    }
    row.emplace_back(std::move(shaken));
  }
  return row;
}

}  // namespace

Seconds counts_until(const PourState& state, const RunState& run, Seconds at, Unended unended) {
  if (state.closed) at = std::min(at, state.clock(*state.closed));
  if (run.to) at = std::min(at, *run.to);
  const bool on = !run.to && unended == Unended::runs_on;
  if (run.rest || on || unended == Unended::whole) return at;
  const auto tells = [&](EventRef ref) {
    const LogEntry& entry = state.log[ref];
    return !entry.struck && entry.sense != LogEntry::Sense::wrong;
  };
  const Moment from = state.moment(run.from);
  auto next = std::upper_bound(state.order.begin(), state.order.end(), from,
                               [&](Moment m, EventRef ref) { return m < state.log[ref].when; });
  next = std::find_if(next, state.order.end(), tells);
  return next == state.order.end() ? at : std::min(at, state.clock(state.log[*next].when));
}

void for_weighed(const PourState& state, const RunState& run, Seconds until,
                 const std::function<void(const trade::Interval&)>& visit) {
  trade::Interval piece{run.from, until};
  if (const auto& type = state.plan->motor_type) {
    for (const RunSpeed& speed : run.speeds) {
      if (speed.from >= until) break;
      const double counts = trade::second_counts(speed.speed, type->working());
      if (counts != piece.work && speed.from > piece.from) {
        visit({piece.from, speed.from, piece.work});
        piece.from = speed.from;
      }
      piece.work = counts;
    }
  }
  visit(piece);
}

std::vector<RowShaking> shaking(const PourState& state, std::size_t element, Seconds until,
                                Unended unended) {
  std::vector<RowShaking> shaken;
  for (std::size_t row = 0; row < state.elements[element].rows.size(); ++row) {
    shaken.push_back(shaking(state, element, row, until, unended));
  }
  return shaken;
}

RowShaking shaking(const PourState& state, std::size_t element, std::size_t row, Seconds until,
                   Unended unended) {
  return shaking_since(state, element, row, Seconds{-1e18}, until, unended);
}

RowShaking shaking_since(const PourState& state, std::size_t element, std::size_t row,
                         Seconds since, Seconds until, Unended unended) {
  const RowState& there = state.elements[element].rows[row];
  std::vector<RunPiece> runs;
  std::vector<const HangState*> hangs;
  auto first = there.runs.end();  // one after the other
  while (first != there.runs.begin() && state.runs[*(first - 1)].to.value_or(until) > since) {
    --first;
  }
  for (; first != there.runs.end(); ++first) {
    const RunState& run = state.runs[*first];
    for_weighed(state, run, counts_until(state, run, until, unended),
                [&](const trade::Interval& when) {
                  runs.push_back({when, &run});
                });
  }
  for (const std::size_t hang : there.hangs) hangs.push_back(&state.hangs[hang]);
  return shaking_of_row(*state.plan, state.plan->elements[element].rows[row], runs, hangs);
}

std::vector<Side> judged_sides(const Element& element) {
  std::vector<Side> sides;
  for (const Side side : {Side::near_side, Side::far_side}) {
    if (element.has_rows(side)) sides.push_back(side);
  }
  return sides;
}

trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides) {
  return face_of(state, element, sides,
                 shaking(state, element, state.last, Unended::to_next_event));
}

trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    const std::vector<RowShaking>& shaken) {
  return face_of(state, element, sides, shaken, set_steps(state, element));
}

trade::Face face_of(const PourState& state, std::size_t element, const std::vector<Side>& sides,
                    const std::vector<RowShaking>& shaken, std::vector<trade::SetStep> sets) {
  const Element& planned = state.plan->elements[element];
  trade::Face face{planned.bays, state.elements[element].tops,      planned.openings,
                   {},           planned.thickest() > kThinSection, std::move(sets)};
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

Length deepest_over(const std::vector<BayReached>& bays, const ElementState& element, Seconds at) {
  Length deepest;
  for (const BayReached& reached : bays) {
    deepest = std::max(deepest, element.tops[reached.bay].at(at) - reached.low);
  }
  return deepest;
}

namespace {

// Of what was tested by then for an element, the wettest and the coldest; with what is planned the
// worst it may press with.
struct Fresh {
  Length slump;
  Celsius temp;
};

Fresh fresh_at(const PourState& state, std::size_t element, const Mix& mix, Seconds at) {
  Length wettest = mix.slump;
  std::optional<Celsius> coldest;
  for (const TestState& test : state.tests) {
    if (test.at > at) break;
    if (!may_be_of(state, test, element)) continue;
    if (test.what.slump) wettest = std::max(wettest, *test.what.slump);
    if (test.what.temp) coldest = std::min(coldest.value_or(*test.what.temp), *test.what.temp);
  }
  // Untested it is never taken as warm.
  return {wettest, coldest.value_or(mix.temp_low.value_or(state.plan->limits.temp_min.value))};
}

}  // namespace

trade::PressureCase pressure_case(const PourState& state, std::size_t element, Seconds at) {
  const Element& planned = state.plan->elements[element];
  const Mix& mix = mix_at(state, element, at);
  const Fresh fresh = fresh_at(state, element, mix, at);
  trade::PressureCase c;
  c.shape = planned.kind == ElementKind::column ? trade::FormShape::column : trade::FormShape::wall;
  c.unit_weight = heaviest(state, at);
  c.form_height = planned.rise_height();
  c.pour_height = planned.rise_height();
  c.temperature = fresh.temp;
  c.slump = fresh.slump;
  c.cement = mix.cement;
  c.set_time = planned_set(mix, fresh.temp, SetSide::late);
  if (const auto measured = measured_set(state, mix)) {  // the later it sets, the more it presses
    c.set_time = std::max(c.set_time, measured->late / set_rate(mix, fresh.temp, SetSide::late));
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
  Volume stands;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    stands += planned.volume(bay, {}, state.elements[element].tops[bay].standing());
  }
  return stands;
}

}  // namespace rb
