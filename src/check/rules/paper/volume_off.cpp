// volume-off: what the trucks brought is not what stands in the forms.
#include <cmath>

#include "check/rule.h"

namespace rb {

namespace {

void look_volume_off(const Look& look, const Rule& rule, Findings& out) {
  if (look.asof.live && !look.state.closed) return;  // trucks run ahead of the readings
  Volume brought;
  bool any = false;
  for (const TruckState& truck : look.state.trucks) {
    if (!truck.what || !truck.discharged) continue;
    brought += truck.what->volume;
    any = true;
  }
  Volume stands;
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) stands += net_volume(look.state, e);
  if (!any || stands.value() <= 0) return;
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
     "volume_tolerance 8 % of the net volume", "plan, by the engineer",
     said("Check tickets and tops; look for leaks, bulges and voids")},
    look_volume_off};

}  // namespace rb
