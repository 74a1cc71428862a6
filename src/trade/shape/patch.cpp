#include "trade/shape/patch.h"

#include <algorithm>
#include <vector>

namespace rb::trade {

namespace {

// How much of [from, to] the patches that hold z cover.
Length covered_at(std::span<const Patch> by_x, Length z, Length from, Length to) {
  Length sum;
  Length reached = from;
  for (const Patch& p : by_x) {
    if (!holds_z(p, z)) continue;
    const Length end = std::min(to, p.x + p.w);
    const Length begin = std::max(reached, p.x);
    if (end > begin) sum += end - begin;
    reached = std::max(reached, end);
  }
  return sum;
}

}  // namespace

Area covered(std::span<const Patch> patches, const Patch& within) {
  std::vector<Patch> by_x(patches.begin(), patches.end());
  std::sort(by_x.begin(), by_x.end(), [](const Patch& a, const Patch& b) { return a.x < b.x; });
  const Length low = within.z;
  const Length high = within.z + within.h;
  std::vector<Length> edges{low, high};
  for (const Patch& p : by_x) {
    for (const Length& z : {p.z, p.z + p.h}) {
      if (z > low && z < high) edges.push_back(z);
    }
  }
  std::sort(edges.begin(), edges.end());
  Area sum;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const Length tall = edges[i + 1] - edges[i];
    if (tall <= Length{}) continue;
    sum += tall * covered_at(by_x, edges[i] + tall / 2.0, within.x, within.x + within.w);
  }
  return sum;
}

}  // namespace rb::trade
