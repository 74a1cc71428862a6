// What of a face a lift's dose depends on, so that a field worked out once can be told to stand.
#include <algorithm>

#include "trade/dose/dose.h"

namespace rb::trade {

namespace {

struct PartReach {
  Length low, high;      // heights of concrete in the bands
  Seconds from{}, to{};  // from when it came to when the last of it set
};

std::optional<PartReach> reach_of(const Face& face, const std::vector<Band>& bands) {
  std::optional<PartReach> reach;
  for (std::size_t bay = 0; bay < bands.size(); ++bay) {
    const Length top = std::min(bands[bay].to, face.tops[bay].standing());
    if (top <= bands[bay].from) continue;
    const auto first = face.tops[bay].covered(bands[bay].from);
    const auto last = face.tops[bay].reached(top);
    if (!first || !last) continue;
    if (!reach) reach = PartReach{bands[bay].from, top, *first, *last};
    reach->low = std::min(reach->low, bands[bay].from);
    reach->high = std::max(reach->high, top);
    reach->from = std::min(reach->from, *first);
    reach->to = std::max(reach->to, *last);
  }
  return reach;
}

// The steps that hold for concrete that came in [from, to].
std::vector<SetStep> steps_between(const std::vector<SetStep>& sets, Seconds from, Seconds to) {
  const auto after = [](Seconds m, const SetStep& s) { return m < s.from; };
  auto first = std::upper_bound(sets.begin(), sets.end(), from, after);
  if (first != sets.begin()) --first;
  return {first, std::max(std::upper_bound(first, sets.end(), to, after), first + 1)};
}

// Running times clipped to a window, those shared before still shared.
class Clipper {
 public:
  Clipper(Seconds from, Seconds to) : from_(from), to_(to) {}
  Running operator()(const Running& whole) {
    if (!last_.shares(whole)) {
      last_ = whole;
      clipped_ = whole.clipped(from_, to_);
    }
    return clipped_;
  }

 private:
  Seconds from_, to_;
  Running last_;
  Running clipped_;  // of last_: both never ran at first
};

}  // namespace

Face part_for(const Face& face, const std::vector<Band>& bands) {
  Face part{face.bays, {}, {}, {}, face.worst_side_counts, {}};
  const auto reach = reach_of(face, bands);
  part.sides.resize(face.sides.size());
  part.tops.resize(face.tops.size());
  if (!reach) {
    part.sets = {face.sets.front()};
    return part;
  }
  for (std::size_t bay = 0; bay < bands.size(); ++bay) {
    if (bands[bay].to > bands[bay].from) {
      part.tops[bay] = face.tops[bay].between(bands[bay].from, bands[bay].to);
    }
  }
  for (const Patch& opening : face.openings) {
    if (opening.z < reach->high && opening.z + opening.h > reach->low) {
      part.openings.push_back(opening);
    }
  }
  part.sets = steps_between(face.sets, reach->from, reach->to);
  Seconds last_set = reach->to;
  for (const SetStep& step : part.sets) last_set = std::max(last_set, step.sets(reach->to));
  for (std::size_t s = 0; s < face.sides.size(); ++s) {
    Clipper clip{reach->from, last_set};
    for (const Shaker& shaker : face.sides[s]) {
      if (shaker.z - shaker.reach_z - kSamePlace > reach->high) continue;
      if (shaker.z + shaker.reach_z + kSamePlace < reach->low) continue;
      Running ran = clip(shaker.running);
      if (ran.empty()) continue;
      part.sides[s].push_back(shaker);
      part.sides[s].back().running = std::move(ran);
    }
  }
  return part;
}

}  // namespace rb::trade
