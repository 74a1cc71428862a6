// One spot's story: when it filled, every second it was shaken and by which motors, when it set.
#include <algorithm>

#include "trade/dose/dose.h"

namespace rb::trade {

namespace {

bool in_openings(const std::vector<Patch>& openings, Length x, Length z) {
  return std::any_of(openings.begin(), openings.end(),
                     [&](const Patch& p) { return holds_x(p, x) && holds_z(p, z); });
}

}  // namespace

std::optional<SpotStory> spot_story(const Face& face, std::size_t side, Length x, Length z) {
  const auto came = face.tops[face.bay_at(x)].reached(z);
  if (!came || in_openings(face.openings, x, z)) return std::nullopt;
  SpotStory story{*came, face.sets_at(*came), {}, {}};
  const std::vector<Shaker>& shakers = face.sides[side];
  std::vector<std::size_t> cover;
  std::vector<Seconds> edges;
  std::vector<Interval> all;
  for (std::size_t i = 0; i < shakers.size(); ++i) {
    if (!shakers[i].reaches_x(x) || !shakers[i].reaches_z(z)) continue;
    cover.push_back(i);
    for (const Interval& run : shakers[i].running) {
      const Interval seen{std::max(run.from, story.came), std::min(run.to, story.sets), run.work};
      if (seen.to <= seen.from) continue;
      all.push_back(seen);
      edges.push_back(seen.from);
      edges.push_back(seen.to);
    }
  }
  story.dose = RunningTime{std::move(all)}.within(story.came, story.sets);
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  for (std::size_t e = 0; e + 1 < edges.size(); ++e) {
    SpotStory::Shaken shaken{{edges[e], edges[e + 1], 0}, {}};
    for (const std::size_t i : cover) {
      for (const Interval& run : shakers[i].running) {
        if (run.from <= edges[e] && run.to >= edges[e + 1]) {
          shaken.shakers.push_back(i);
          shaken.when.work = std::max(shaken.when.work, run.work);
          break;
        }
      }
    }
    if (!shaken.shakers.empty()) story.shaken.push_back(std::move(shaken));
  }
  return story;
}

}  // namespace rb::trade
