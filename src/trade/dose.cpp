#include "trade/dose.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace rb::trade {

namespace {

// Sums of spans that should be equal differ by rounding; less than this under the least dose is not
// under it.
constexpr Seconds kRounding{1e-6};

using Cover = std::vector<std::size_t>;  // indices into a side's shakers

bool in_openings(const std::vector<Patch>& openings, Length x, Length z) {
  return std::any_of(openings.begin(), openings.end(),
                     [&](const Patch& p) { return holds_x(p, x) && holds_z(p, z); });
}

// Places along x where the set of motors, the bay or the openings change.
std::vector<Length> changes_along(const Face& face) {
  std::vector<Length> changes;
  const auto edge = [&](Length x) {  // a cell's middle on the very edge is a strip of its own
    changes.push_back(x - kSamePlace);
    changes.push_back(x + kSamePlace);
  };
  Length end;
  for (const Length& bay : face.bays) edge(end += bay);
  for (const Patch& p : face.openings) {
    edge(p.x);
    edge(p.x + p.w);
  }
  for (const auto& side : face.sides) {
    for (const Shaker& s : side) {
      changes.push_back(s.x - s.reach_x - kSamePlace);
      changes.push_back(s.x + s.reach_x + kSamePlace);
    }
  }
  std::sort(changes.begin(), changes.end());
  return changes;
}

// What one strip of cells sees of a side: the motors that reach its x, and their running time
// together for every set of them that some height has in common.
class SideSeen {
 public:
  SideSeen(const std::vector<Shaker>& shakers, Length x) : shakers_(shakers) {
    for (std::size_t i = 0; i < shakers.size(); ++i) {
      if (shakers[i].reaches_x(x)) near_.push_back(i);
    }
  }
  [[nodiscard]] const Cover& near() const { return near_; }
  [[nodiscard]] const Shaker& shaker(std::size_t i) const { return shakers_[i]; }

  const RunningTime& running_at(Length z) {
    Cover cover;
    for (const std::size_t i : near_) {
      if (shakers_[i].reaches_z(z)) cover.push_back(i);
    }
    const auto [it, fresh] = together_.try_emplace(std::move(cover));
    if (fresh) {
      std::vector<Interval> spans;
      for (const std::size_t i : it->first) {
        spans.insert(spans.end(), shakers_[i].running.begin(), shakers_[i].running.end());
      }
      it->second = RunningTime{std::move(spans)};
    }
    return it->second;
  }

 private:
  const std::vector<Shaker>& shakers_;
  Cover near_;
  std::map<Cover, RunningTime> together_;
};

class StripMaker {
 public:
  StripMaker(const Face& face, std::size_t bay, Length x)
      : face_(face), top_(face.tops[bay]), x_(x) {
    for (const auto& side : face.sides) sides_.emplace_back(side, x);
  }

  std::vector<DosePiece> pieces() {
    std::vector<DosePiece> made;
    const std::vector<Length> cuts = heights();
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      if (cuts[i + 1] - cuts[i] > kSamePlace * 1e-3) add(made, cuts[i], cuts[i + 1]);
    }
    return made;
  }

 private:
  // Every height at which the dose may bend or jump.
  std::vector<Length> heights() {
    std::vector<Length> cuts{Length{}, top_.standing()};
    const auto at_moment = [&](Seconds moment) {
      cuts.push_back(top_.before(moment));
      cuts.push_back(top_.at(moment));
    };
    for (const SurfacePoint& point : top_.points()) cuts.push_back(point.height);
    for (const Patch& p : face_.openings) {
      if (!holds_x(p, x_)) continue;
      cuts.push_back(p.z);
      cuts.push_back(p.z + p.h);
    }
    for (const SetStep& step : face_.sets) at_moment(step.from);
    for (const SideSeen& side : sides_) {
      for (const std::size_t i : side.near()) {
        const Shaker& s = side.shaker(i);
        cuts.push_back(s.z - s.reach_z - kSamePlace);
        cuts.push_back(s.z + s.reach_z + kSamePlace);
        for (const Interval& run : s.running) {
          for (const Seconds edge : {run.from, run.to}) {
            at_moment(edge);
            for (const SetStep& step : face_.sets) at_moment(edge - step.to_set);
          }
        }
      }
    }
    const Length top = top_.standing();
    std::erase_if(cuts, [&](const Length& z) { return z < Length{} || z > top; });
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
    return cuts;
  }

  void add(std::vector<DosePiece>& made, Length z0, Length z1) {
    const Length middle = (z0 + z1) * 0.5;
    if (in_openings(face_.openings, x_, middle)) return;
    const auto came0 = top_.covered(z0);
    const auto came1 = top_.reached(z1);
    if (!came0 || !came1) return;
    const Seconds to_set = face_.to_set((*came0 + *came1) / 2.0);
    DosePiece piece{z0, z1, {}, {}};
    bool first = true;
    for (SideSeen& side : sides_) {
      const RunningTime& running = side.running_at(middle);
      const DosePiece seen{z0, z1, running.within(*came0, *came0 + to_set),
                           running.within(*came1, *came1 + to_set)};
      if (first) {
        piece = seen;
      } else if (!choose(made, piece, seen)) {
        return;  // split in two, both added
      }
      first = false;
    }
    made.push_back(piece);
  }

  // Keeps in `piece` the side that counts. Where the two sides' lines cross inside, adds the lower
  // part to `made` and keeps the upper.
  bool choose(std::vector<DosePiece>& made, DosePiece& piece, const DosePiece& other) const {
    const bool worst = face_.worst_side_counts;
    const auto pick = [&](Seconds a, Seconds b) { return worst ? std::min(a, b) : std::max(a, b); };
    const double g0 = (piece.d0 - other.d0).count();
    const double g1 = (piece.d1 - other.d1).count();
    if (g0 * g1 < 0) {
      const double share = g0 / (g0 - g1);
      const Length z = piece.z0 + (piece.z1 - piece.z0) * share;
      const Seconds d = piece.d0 + (piece.d1 - piece.d0) * share;
      made.push_back({piece.z0, z, pick(piece.d0, other.d0), d});
      made.push_back({z, piece.z1, d, pick(piece.d1, other.d1)});
      return false;
    }
    piece.d0 = pick(piece.d0, other.d0);
    piece.d1 = pick(piece.d1, other.d1);
    return true;
  }

  const Face& face_;
  const TopCurve& top_;
  Length x_;
  std::vector<SideSeen> sides_;
};

// The part of a piece inside a band; nothing when there is none.
std::optional<DosePiece> clipped(const DosePiece& piece, const Band& band) {
  const Length a = std::max(piece.z0, band.from);
  const Length b = std::min(piece.z1, band.to);
  if (b <= a) return std::nullopt;
  const auto dose_at = [&](Length z) {
    if (z == piece.z0) return piece.d0;
    if (z == piece.z1) return piece.d1;
    const double share = (z - piece.z0) / (piece.z1 - piece.z0);
    return piece.d0 + (piece.d1 - piece.d0) * share;
  };
  return DosePiece{a, b, dose_at(a), dose_at(b)};
}

// Which part of a piece lies under a dose: nothing, or a piece.
std::optional<DosePiece> part_under(const DosePiece& p, Seconds least) {
  const bool under0 = p.d0 < least - kRounding;
  const bool under1 = p.d1 < least - kRounding;
  if (!under0 && !under1) return std::nullopt;
  if (under0 && under1) return p;
  const double share = std::clamp((least - p.d0) / (p.d1 - p.d0), 0.0, 1.0);
  const Length z = p.z0 + (p.z1 - p.z0) * share;
  return under0 ? DosePiece{p.z0, z, p.d0, least} : DosePiece{z, p.z1, least, p.d1};
}

}  // namespace

bool Shaker::reaches_x(Length spot) const {
  const Length off = spot - x;
  return off <= reach_x + kSamePlace && -off <= reach_x + kSamePlace;
}

bool Shaker::reaches_z(Length spot) const {
  const Length off = spot - z;
  return off <= reach_z + kSamePlace && -off <= reach_z + kSamePlace;
}

Length Face::length() const {
  Length sum;
  for (const Length& bay : bays) sum += bay;
  return sum;
}

std::size_t Face::bay_at(Length x) const {
  Length end;
  for (std::size_t bay = 0; bay < bays.size(); ++bay) {
    end += bays[bay];
    if (x < end) return bay;
  }
  return bays.size() - 1;
}

Seconds Face::to_set(Seconds came) const {
  const auto later = std::upper_bound(sets.begin(), sets.end(), came,
                                      [](Seconds m, const SetStep& s) { return m < s.from; });
  return later == sets.begin() ? sets.front().to_set : (later - 1)->to_set;
}

DoseField dose_field(const Face& face, Length cell) {
  DoseField field;
  const Length length = face.length();
  const auto cells = static_cast<std::size_t>(std::ceil(length / cell - 1e-6));
  const std::vector<Length> changes = changes_along(face);
  auto segment = changes.end();
  for (std::size_t i = 0; i < cells; ++i) {
    const Length x0 = cell * static_cast<double>(i);
    const bool last = i + 1 == cells;
    const Length x1 = last ? length : cell * static_cast<double>(i + 1);
    const Length middle = last ? (x0 + x1) * 0.5 : cell * (static_cast<double>(i) + 0.5);
    const auto here = std::lower_bound(changes.begin(), changes.end(), middle);
    if (!field.strips.empty() && here == segment) {
      field.strips.back().x1 = x1;
      continue;
    }
    segment = here;
    const std::size_t bay = face.bay_at(middle);
    field.strips.push_back({x0, x1, bay, StripMaker{face, bay, middle}.pieces()});
  }
  return field;
}

std::optional<double> DoseShares::under_share() const {
  if (area.value() <= 0) return std::nullopt;
  return under / area;
}

DoseShares dose_shares(const DoseField& field, const std::vector<Band>& bands, Seconds dose_min) {
  DoseShares shares;
  double weighted = 0;  // m2 s
  for (const DoseStrip& strip : field.strips) {
    const Length width = strip.x1 - strip.x0;
    for (const DosePiece& whole : strip.pieces) {
      const auto piece = clipped(whole, bands[strip.bay]);
      if (!piece) continue;
      const Area area = width * (piece->z1 - piece->z0);
      shares.area += area;
      weighted += area.value() * (piece->d0 + piece->d1).count() / 2.0;
      const Seconds least = std::min(piece->d0, piece->d1);
      shares.least = shares.least ? std::min(*shares.least, least) : least;
      if (const auto under = part_under(*piece, dose_min)) {
        shares.under += width * (under->z1 - under->z0);
      }
    }
  }
  if (shares.area.value() > 0) shares.mean = seconds(weighted / shares.area.value());
  return shares;
}

std::optional<WeakPatch> worst_patch(const DoseField& field, const std::vector<Band>& bands,
                                     Seconds dose_min) {
  // Under-dosed pieces are joined where they touch: up a strip, and across to the strip before.
  struct Part {
    Length x0, x1;
    DosePiece piece;
    std::size_t group;
  };
  std::vector<Part> parts;
  std::vector<std::size_t> leader;  // of each group
  const auto lead = [&](std::size_t g) {
    while (leader[g] != g) g = leader[g];
    return g;
  };
  std::size_t previous_from = 0, previous_to = 0;
  for (const DoseStrip& strip : field.strips) {
    const std::size_t from = parts.size();
    for (const DosePiece& whole : strip.pieces) {
      const auto piece = clipped(whole, bands[strip.bay]);
      const auto under = piece ? part_under(*piece, dose_min) : std::nullopt;
      if (!under) continue;
      const std::size_t group = leader.size();
      leader.push_back(group);
      parts.push_back({strip.x0, strip.x1, *under, group});
      const auto touches = [&](const Part& p) {
        return p.piece.z0 <= under->z1 + kSamePlace && under->z0 <= p.piece.z1 + kSamePlace;
      };
      for (std::size_t i = previous_from; i < previous_to; ++i) {
        if (touches(parts[i])) leader[lead(parts[i].group)] = lead(group);
      }
      if (parts.size() - from > 1 && touches(parts[parts.size() - 2])) {
        leader[lead(parts[parts.size() - 2].group)] = lead(group);
      }
    }
    previous_from = from;
    previous_to = parts.size();
  }
  std::map<std::size_t, WeakPatch> patches;
  for (const Part& part : parts) {
    const Area area = (part.x1 - part.x0) * (part.piece.z1 - part.piece.z0);
    const Seconds least = std::min(part.piece.d0, part.piece.d1);
    const Patch box{part.x0, part.piece.z0, part.x1 - part.x0, part.piece.z1 - part.piece.z0};
    const auto [it, fresh] = patches.try_emplace(lead(part.group), WeakPatch{box, area, least});
    if (fresh) continue;
    WeakPatch& patch = it->second;
    const Length right = std::max(patch.box.x + patch.box.w, box.x + box.w);
    const Length top = std::max(patch.box.z + patch.box.h, box.z + box.h);
    patch.box.x = std::min(patch.box.x, box.x);
    patch.box.z = std::min(patch.box.z, box.z);
    patch.box.w = right - patch.box.x;
    patch.box.h = top - patch.box.z;
    patch.area += area;
    patch.least = std::min(patch.least, least);
  }
  std::optional<WeakPatch> worst;
  for (const auto& [group, patch] : patches) {
    if (!worst || patch.area > worst->area) worst = patch;
  }
  return worst;
}

std::optional<SpotStory> spot_story(const Face& face, std::size_t side, Length x, Length z) {
  const auto came = face.tops[face.bay_at(x)].reached(z);
  if (!came || in_openings(face.openings, x, z)) return std::nullopt;
  SpotStory story{*came, *came + face.to_set(*came), {}, {}};
  const std::vector<Shaker>& shakers = face.sides[side];
  Cover cover;
  std::vector<Seconds> edges;
  std::vector<Interval> all;
  for (std::size_t i = 0; i < shakers.size(); ++i) {
    if (!shakers[i].reaches_x(x) || !shakers[i].reaches_z(z)) continue;
    cover.push_back(i);
    for (const Interval& run : shakers[i].running) {
      const Interval seen{std::max(run.from, story.came), std::min(run.to, story.sets)};
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
    SpotStory::Shaken shaken{{edges[e], edges[e + 1]}, {}};
    for (const std::size_t i : cover) {
      for (const Interval& run : shakers[i].running) {
        if (run.from <= edges[e] && run.to >= edges[e + 1]) {
          shaken.shakers.push_back(i);
          break;
        }
      }
    }
    if (!shaken.shakers.empty()) story.shaken.push_back(std::move(shaken));
  }
  return story;
}

}  // namespace rb::trade
