// volume-off: what the trucks brought is not what stands in the forms.
#include <algorithm>
#include <cmath>

#include "check/rule.h"

namespace rb {

namespace {

// Until when every bay that concrete goes into has been read: what came by then stands below a top
// that was told.
Seconds read_until(const PourState& state, Seconds now) {
  Seconds until = now;
  for (std::size_t e = 0; e < state.elements.size(); ++e) {
    const LiftState* lift = state.placing(e);
    if (lift == nullptr) continue;
    for (std::size_t bay = 0; bay < lift->bays.size(); ++bay) {
      if (lift->bay_ended[bay]) continue;
      until = std::min(until, lift->bays[bay].read.value_or(lift->started));
    }
  }
  return until;
}

// What the trucks brought; while the pour goes on, the most and the least that may stand by the
// readings there are.
struct Brought {
  Volume most, least, load;  ///< and the greatest load
  bool any = false;
};
Brought brought_by(const PourState& state, Seconds read) {
  Brought sum;
  for (const TruckState& truck : state.trucks) {
    if (!truck.what || truck.parts.empty()) continue;
    sum.any = true;
    sum.load = std::max(sum.load, truck.what->volume);
    sum.most += truck.placed();
    if (truck.ended() && *truck.ended() <= read) sum.least += truck.placed();
  }
  return sum;
}

void look_volume_off(const Look& look, const Rule& rule, Findings& out) {
  const bool goes_on = look.asof.live && !look.state.closed;
  const Brought sum =
      brought_by(look.state, goes_on ? read_until(look.state, look.asof.at) : look.asof.at);
  Volume stands;
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) stands += net_volume(look.state, e);
  if (!sum.any || stands.value() <= 0) return;
  Volume brought = sum.most;
  if (goes_on) {
    // One load is let pass: it may stand in the pump's line, or its ticket be written yet.
    if (sum.least > stands + sum.load) {
      brought = sum.least;
    } else if (stands <= sum.most + sum.load) {
      return;
    }
  }
  const auto& tolerance = look.plan().limits.volume_tolerance;
  const double off = (brought - stands) / stands;
  if (!over(std::abs(off), tolerance.value)) return;
  Finding f = found(rule);
  f.measured = share(off);
  f.limit = share(tolerance.value);
  f.source = limit_source(rule, tolerance.from);
  f.sentence =
      said("{brought} discharged against {stands} below the tops: {measured+}, limit {limit}");
  f.facts = {{"brought", amount(brought)}, {"stands", amount(stands)}};
  out.push_back(std::move(f));
}

}  // namespace

extern const Rule kVolumeOff{
    {"volume-off", said("Volumes do not agree"), Severity::mend, Cost::paper,
     "a void, a form that moved, a lost load or a wrong top", said("common practice, no source"),
     "volume_tolerance 8 % of the net volume; while the pour goes on one load more",
     "plan, by the engineer", said("Check tickets and tops; look for leaks, bulges and voids")},
    look_volume_off};

}  // namespace rb
