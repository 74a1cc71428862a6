#include "check/look_power.h"

#include <algorithm>
#include <numeric>
#include <tuple>

#include "check/memory.h"
#include "trade/motors/power.h"

namespace rb {

namespace {

enum class Through { any, trunk };

// What draws from one source of current.
struct FeedLine {
  std::vector<std::size_t> inverters;  // into the plan's
  std::vector<FeedWeight> weights;
  Through through = Through::any;
};

// Starts and ends from a moment on of motors of an inverter, those of a row that shook alike
// together.
struct Change {
  Seconds at{};
  int more = 0;
  std::size_t of = 0;  // into FeedLine::inverters
};

void changes_of(const Look& look, const FeedLine& line, std::size_t of, Seconds since,
                std::vector<Change>& changes) {
  const Inverter& inverter = look.plan().power[line.inverters[of]];
  const auto on_it = [&](const MotorId& motor) {
    return line.through == Through::trunk ? feeds_by_trunk(inverter, motor)
                                          : feeds(inverter, motor);
  };
  for (std::size_t e = 0; e < look.plan().elements.size(); ++e) {
    const auto& rows = look.plan().elements[e].rows;
    for (std::size_t r = 0; r < rows.size(); ++r) {
      std::vector<std::pair<trade::Running, int>> fed;
      for (std::size_t i = 0; i < rows[r].motors.size(); ++i) {
        if (!on_it(rows[r].motors[i].id)) continue;
        const trade::Running& running = look.drew[e][r][i];
        if (fed.empty() || !fed.back().first.shares(running)) fed.emplace_back(running, 0);
        ++fed.back().second;
      }
      for (const auto& [running, motors] : fed) {
        const auto& spans = running.spans();
        auto span = std::lower_bound(spans.begin(), spans.end(), since,
                                     [](const trade::Interval& s, Seconds m) { return s.to < m; });
        for (; span != spans.end(); ++span) {
          if (span->from >= since) changes.push_back({span->from, +motors, of});
          changes.push_back({span->to, -motors, of});
        }
      }
    }
  }
}

std::vector<Change> changes_of(const Look& look, const FeedLine& line, Seconds since) {
  std::vector<Change> changes;
  for (std::size_t i = 0; i < line.inverters.size(); ++i) changes_of(look, line, i, since, changes);
  std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) {
    return std::tie(a.at, a.more, a.of) < std::tie(b.at, b.more, b.of);
  });
  return changes;
}

// Worked out from counts, not summed up as they change: no rounding gathers.
double load_of(const FeedMemory& now) {
  double load = 0;
  for (std::size_t i = 0; i < now.running.size(); ++i) {
    if (now.running[i] <= 0) continue;
    load += now.weights[i].motor * now.running[i] + now.weights[i].beside;
  }
  return load;
}

void count_in(FeedMemory& now, const Change& change) {
  if (!now.most_ended) now.most.to = change.at;
  now.most_ended = true;
  now.running[change.of] += change.more;
  const double load = load_of(now);
  if (load <= 0 || load < now.most.load || (!now.live && load == now.most.load)) return;
  const int motors = std::accumulate(now.running.begin(), now.running.end(), 0);
  now.most = {change.at, {}, static_cast<std::size_t>(motors), load};
  now.most_ended = false;
}

std::optional<FeedMoment> busiest(const Look& look, const FeedLine& line, FeedMemory& known) {
  if (known.live != look.asof.live || known.weights != line.weights) known = {};
  known.live = look.asof.live;
  known.weights = line.weights;
  known.running.resize(line.inverters.size());
  FeedMemory now = known;
  const auto remember = [&] {
    if (known.until >= look.state.last) return;
    known = now;
    known.until = look.state.last;
  };
  for (const Change& change : changes_of(look, line, known.until)) {
    if (change.at >= look.state.last) remember();
    count_in(now, change);
  }
  remember();
  if (!now.most_ended) now.most.to = look.asof.at;
  if (now.most.motors == 0) return std::nullopt;
  return now.most;
}

// As it was set last by then; the plan's until somebody said.
Potential volts_at(const Look& look, std::size_t inverter, Seconds at) {
  Potential volts = look.plan().power[inverter].volts;
  for (const SpeedState& set : look.state.speeds) {
    if (set.at > at) break;
    if (set.inverter == inverter && set.what.volts) volts = *set.what.volts;
  }
  return volts;
}

// The highest it may have given: the power drawn from a generator goes by it.
Potential highest_volts(const Look& look, std::size_t inverter) {
  Potential volts = look.plan().power[inverter].volts;
  for (const SpeedState& set : look.state.speeds) {
    if (set.inverter == inverter && set.what.volts) volts = std::max(volts, *set.what.volts);
  }
  return volts;
}

FeedWeight amps_of(const Look& look, std::size_t inverter) {
  FeedWeight weight{in_amperes(look.plan().motor_type->amps), 0};
  if (const auto& internal = look.plan().power[inverter].internal) {
    weight.beside = in_amperes(internal->amps) * internal->heads;
  }
  return weight;
}

trade::Feed cord(const Look& look, const Cable& cable) {
  trade::Feed feed;
  feed.section = cable.section;
  feed.length = cable.length;
  feed.frequency = look.plan().motor_type->top_speed;
  return feed;
}

PowerReport::Most most_of(const FeedMoment& moment) {
  return {moment.from, moment.to, moment.motors, amperes(moment.load)};
}

// What is lost to a motor at the end of the trunk as it is busiest, and of its own cord; else of a
// motor's own cord alone.
void put_drop(const Look& look, PowerReport& report) {
  const Inverter& inverter = look.plan().power[report.inverter];
  std::vector<trade::Stretch> cords;
  const Seconds at = report.trunk ? report.trunk->from : report.all.from;
  if (report.trunk) cords.push_back({report.trunk->amps, cord(look, *inverter.trunk)});
  if (inverter.cable) {
    cords.push_back({look.plan().motor_type->amps, cord(look, *inverter.cable)});
  }
  report.volts = volts_at(look, report.inverter, at);
  if (cords.empty()) return;
  const auto drop = trade::drop_along(report.volts, cords);
  if (drop) report.lost = drop->share;
  report.lost_all = !drop;
}

void look_at_generators(Look& look) {
  auto all = look.plan().by_generator();
  look.feeds->generators.resize(all.size());
  for (std::size_t g = 0; g < all.size(); ++g) {
    FeedLine line{std::move(all[g]), {}};
    for (const std::size_t i : line.inverters) {
      const Potential volts = highest_volts(look, i);
      const auto weigh = [&](double amps) {
        return in_kilovoltamperes(trade::apparent_power(volts, amperes(amps)));
      };
      const FeedWeight amps = amps_of(look, i);
      line.weights.push_back({weigh(amps.motor), weigh(amps.beside)});
    }
    const auto moment = busiest(look, line, look.feeds->generators[g]);
    if (!moment) continue;
    const ApparentPower gives = look.plan().power[line.inverters.front()].generator->gives();
    look.generators.push_back({std::move(line.inverters), moment->from, moment->to, moment->motors,
                               kilovoltamperes(moment->load), gives});
  }
}

}  // namespace

void look_at_power(Look& look) {
  const Plan& plan = look.plan();
  if (!plan.motor_type) return;
  look.feeds->inverters.resize(plan.power.size());
  look.feeds->trunks.resize(plan.power.size());
  for (std::size_t i = 0; i < plan.power.size(); ++i) {
    FeedLine line{{i}, {amps_of(look, i)}};
    const auto all = busiest(look, line, look.feeds->inverters[i]);
    if (!all) continue;
    PowerReport report{.inverter = i, .all = most_of(*all), .volts = plan.power[i].volts};
    if (plan.power[i].trunk) {
      line.through = Through::trunk;
      const auto trunk = busiest(look, line, look.feeds->trunks[i]);
      if (trunk) report.trunk = most_of(*trunk);
    }
    put_drop(look, report);
    look.power.push_back(std::move(report));
  }
  look_at_generators(look);
}

}  // namespace rb
