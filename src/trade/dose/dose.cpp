#include "trade/dose/dose.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace rb::trade {

namespace {

using Schedule = std::size_t;             // index into a side's distinct running times
using Schedules = std::vector<Schedule>;  // sorted

// The motors of a row share one running time: told apart once, they are compared by number after.
class SideSchedules {
 public:
  explicit SideSchedules(const std::vector<Shaker>& shakers) {
    for (const Shaker& shaker : shakers) {
      const auto known = std::find_if(distinct_.rbegin(), distinct_.rend(),
                                      [&](const Running* r) { return *r == shaker.running; });
      if (known == distinct_.rend()) {
        of_.push_back(distinct_.size());
        distinct_.push_back(&shaker.running);
      } else {
        of_.push_back(static_cast<Schedule>(distinct_.rend() - known) - 1);
      }
    }
  }
  [[nodiscard]] Schedule of(std::size_t shaker) const { return of_[shaker]; }

  const RunningTime& together(const Schedules& schedules) {
    const auto [it, fresh] = together_.try_emplace(schedules);
    if (fresh) {
      std::vector<Interval> spans;
      for (const Schedule i : schedules) {
        spans.insert(spans.end(), distinct_[i]->begin(), distinct_[i]->end());
      }
      it->second = RunningTime{std::move(spans)};
    }
    return it->second;
  }

 private:
  std::vector<const Running*> distinct_;
  std::vector<Schedule> of_;
  std::map<Schedules, RunningTime> together_;
};

// The heights over which a running time works at some x.
struct Reach {
  Length from, to;
  Schedule schedule = 0;
  bool operator==(const Reach&) const = default;
  bool operator<(const Reach& o) const {
    return std::tie(from, to, schedule) < std::tie(o.from, o.to, o.schedule);
  }
};

// All that the dose up a strip depends on; strips alike in it are alike.
struct StripKind {
  std::size_t bay = 0;
  std::vector<std::size_t> openings;
  std::vector<std::vector<Reach>> sides;
  bool operator<(const StripKind& o) const {
    return std::tie(bay, openings, sides) < std::tie(o.bay, o.openings, o.sides);
  }
};

// Reaches along x, from left to right: what works at an x is kept up from strip to strip.
class SideSweep {
 public:
  SideSweep(const std::vector<Shaker>& shakers, const SideSchedules& schedules) {
    for (std::size_t i = 0; i < shakers.size(); ++i) {
      const Shaker& s = shakers[i];
      if (s.running.empty()) continue;
      coming_.push_back(
          {s.x - s.reach_x - kSamePlace,
           s.x + s.reach_x + kSamePlace,
           {s.z - s.reach_z - kSamePlace, s.z + s.reach_z + kSamePlace, schedules.of(i)}});
    }
    std::sort(coming_.begin(), coming_.end(),
              [](const Along& a, const Along& b) { return a.from > b.from; });
  }

  std::vector<Reach> at(Length x) {
    while (!coming_.empty() && coming_.back().from <= x) {
      working_.push_back(coming_.back());
      coming_.pop_back();
    }
    std::erase_if(working_, [&](const Along& a) { return a.to < x; });
    std::vector<Reach> reaches;
    for (const Along& a : working_) reaches.push_back(a.reach);
    std::sort(reaches.begin(), reaches.end());
    reaches.erase(std::unique(reaches.begin(), reaches.end()), reaches.end());
    return reaches;
  }

 private:
  struct Along {
    Length from, to;
    Reach reach;
  };
  std::vector<Along> coming_;  // the leftmost last
  std::vector<Along> working_;
};

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

class StripMaker {
 public:
  StripMaker(const Face& face, Band band, std::vector<SideSchedules>& schedules,
             const StripKind& kind)
      : face_(face), band_(band), schedules_(schedules), kind_(kind), top_(face.tops[kind.bay]) {}

  DosePieces pieces() {
    const std::vector<Length> edges = band_edges();
    for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
      if (edges[i + 1] - edges[i] > kSamePlace * 1e-3) add_band(edges[i], edges[i + 1]);
    }
    return DosePieces{std::move(made_)};
  }

 private:
  // Heights at which the motors that work, or the openings, change.
  [[nodiscard]] std::vector<Length> band_edges() const {
    const Length top = std::min(band_.to, top_.standing());
    if (top <= band_.from) return {};
    std::vector<Length> edges{band_.from, top};
    const auto edge = [&](Length z) {
      if (z > band_.from && z < top) edges.push_back(z);
    };
    for (const std::size_t i : kind_.openings) {
      edge(face_.openings[i].z);
      edge(face_.openings[i].z + face_.openings[i].h);
    }
    for (const auto& side : kind_.sides) {
      for (const Reach& reach : side) {
        edge(reach.from);
        edge(reach.to);
      }
    }
    std::sort(edges.begin(), edges.end());
    edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
    return edges;
  }

  void add_band(Length z0, Length z1) {
    const Length middle = (z0 + z1) * 0.5;
    for (const std::size_t i : kind_.openings) {
      if (holds_z(face_.openings[i], middle)) return;
    }
    const auto came0 = top_.covered(z0);
    const auto came1 = top_.reached(z1);
    if (!came0 || !came1) return;
    running_.clear();
    for (std::size_t s = 0; s < kind_.sides.size(); ++s) {
      Schedules at_work;
      for (const Reach& reach : kind_.sides[s]) {
        if (reach.from <= middle && middle <= reach.to) at_work.push_back(reach.schedule);
      }
      std::sort(at_work.begin(), at_work.end());
      running_.push_back(&schedules_[s].together(at_work));
    }
    const std::vector<Length> cuts = cuts_between(z0, z1, *came0, *came1);
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      if (cuts[i + 1] - cuts[i] > kSamePlace * 1e-3) add_piece(cuts[i], cuts[i + 1]);
    }
  }

  // Heights inside a band at which the dose may bend or jump: a reading, a change of the time to
  // set, and where concrete came, or sets, as a run begins or ends.
  [[nodiscard]] std::vector<Length> cuts_between(Length z0, Length z1, Seconds came0,
                                                 Seconds came1) const {
    std::vector<Length> cuts{z0, z1};
    const auto cut = [&](Length z) {
      if (z > z0 && z < z1) cuts.push_back(z);
    };
    const auto at_moment = [&](Seconds moment) {
      cut(top_.before(moment));
      cut(top_.at(moment));
    };
    const auto& points = top_.points();
    const auto first =
        std::upper_bound(points.begin(), points.end(), z0,
                         [](Length z, const SurfacePoint& p) { return z < p.height; });
    for (auto p = first; p != points.end() && p->height < z1; ++p) cut(p->height);
    for (const SetStep& step : face_.sets) {
      at_moment(step.from);
      if (step.at) at_moment(*step.at);  // what came later never set after it came
    }
    const auto edges_within = [&](const RunningTime& running, Seconds shift) {
      const auto& spans = running.spans();
      auto span = std::lower_bound(spans.begin(), spans.end(), came0 + shift,
                                   [](const Interval& s, Seconds m) { return s.to < m; });
      for (; span != spans.end() && span->from <= came1 + shift; ++span) {
        at_moment(span->from - shift);
        at_moment(span->to - shift);
      }
    };
    for (const RunningTime* running : running_) {
      edges_within(*running, Seconds{});
      for (const SetStep& step : face_.sets) {
        if (!step.at) edges_within(*running, step.to_set);
      }
    }
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
    return cuts;
  }

  void add_piece(Length z0, Length z1) {
    const auto came0 = top_.covered(z0);
    const auto came1 = top_.reached(z1);
    if (!came0 || !came1) return;
    const SetStep& step = step_at(face_.sets, (*came0 + *came1) / 2.0);
    DosePiece piece{z0, z1, {}, {}};
    for (std::size_t s = 0; s < running_.size(); ++s) {
      const DosePiece seen{z0, z1, running_[s]->within(*came0, step.sets(*came0)),
                           running_[s]->within(*came1, step.sets(*came1))};
      if (s == 0) {
        piece = seen;
      } else if (!choose(piece, seen)) {
        return;  // split in two, both added
      }
    }
    made_.push_back(piece);
  }

  // Keeps in `piece` the side that counts. Where the two sides' lines cross inside, adds the lower
  // part and the upper part.
  bool choose(DosePiece& piece, const DosePiece& other) {
    const bool worst = face_.worst_side_counts;
    const auto pick = [&](Seconds a, Seconds b) { return worst ? std::min(a, b) : std::max(a, b); };
    const double g0 = (piece.d0 - other.d0).count();
    const double g1 = (piece.d1 - other.d1).count();
    if (g0 * g1 < 0) {
      const double share = g0 / (g0 - g1);
      const Length z = piece.z0 + (piece.z1 - piece.z0) * share;
      const Seconds d = piece.d0 + (piece.d1 - piece.d0) * share;
      made_.push_back({piece.z0, z, pick(piece.d0, other.d0), d});
      made_.push_back({z, piece.z1, d, pick(piece.d1, other.d1)});
      return false;
    }
    piece.d0 = pick(piece.d0, other.d0);
    piece.d1 = pick(piece.d1, other.d1);
    return true;
  }

  const Face& face_;
  Band band_;
  std::vector<SideSchedules>& schedules_;
  const StripKind& kind_;
  const TopCurve& top_;
  std::vector<const RunningTime*> running_;  // of each side, in the band at hand
  std::vector<DosePiece> made_;
};

// Cells from the left, those that see the same taken together.
class FieldMaker {
 public:
  FieldMaker(const Face& face, const std::vector<Band>& bands) : face_(face), bands_(bands) {
    for (const auto& side : face.sides) schedules_.emplace_back(side);
    for (std::size_t s = 0; s < face.sides.size(); ++s) {
      sweeps_.emplace_back(face.sides[s], schedules_[s]);
    }
  }

  void add(DoseField& field, Length x0, Length x1, Length middle) {
    StripKind kind;
    kind.bay = face_.bay_at(middle);
    for (std::size_t i = 0; i < face_.openings.size(); ++i) {
      if (holds_x(face_.openings[i], middle)) kind.openings.push_back(i);
    }
    for (SideSweep& sweep : sweeps_) kind.sides.push_back(sweep.at(middle));
    const auto known = made_.find(kind);
    if (!field.strips.empty() && known != made_.end() && known == latest_) {
      field.strips.back().x1 = x1;
      return;
    }
    latest_ = known;
    if (known == made_.end()) {
      DosePieces pieces = StripMaker{face_, bands_[kind.bay], schedules_, kind}.pieces();
      latest_ = made_.emplace(std::move(kind), std::move(pieces)).first;
    }
    field.strips.push_back({x0, x1, latest_->first.bay, latest_->second});
  }

 private:
  const Face& face_;
  const std::vector<Band>& bands_;
  std::vector<SideSchedules> schedules_;
  std::vector<SideSweep> sweeps_;
  std::map<StripKind, DosePieces> made_;
  std::map<StripKind, DosePieces>::iterator latest_ = made_.end();
};

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

const SetStep& step_at(const std::vector<SetStep>& steps, Seconds came) {
  const auto later = std::upper_bound(steps.begin(), steps.end(), came,
                                      [](Seconds m, const SetStep& s) { return m < s.from; });
  return later == steps.begin() ? steps.front() : *(later - 1);
}

Seconds sets_at(const std::vector<SetStep>& steps, Seconds came) {
  return step_at(steps, came).sets(came);
}

Seconds Face::sets_at(Seconds came) const {
  return trade::sets_at(sets, came);
}

DoseField dose_field(const Face& face, Length cell) {
  std::vector<Band> whole;
  for (const TopCurve& top : face.tops) whole.push_back({Length{}, top.standing()});
  return dose_field(face, whole, cell);
}

DoseField dose_field(const Face& face, const std::vector<Band>& bands, Length cell) {
  DoseField field;
  FieldMaker maker{face, bands};
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
    maker.add(field, x0, x1, middle);
  }
  return field;
}

}  // namespace rb::trade
