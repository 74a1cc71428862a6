#include "check/face/face_score.h"

#include <algorithm>
#include <span>

#include "pour/log/log_entry.h"
#include "pour/outlook/form.h"
#include "trade/shape/outline.h"

namespace rb {

namespace {

using trade::FacePoint;
using trade::Patch;

constexpr Length kBelowJoint = metres(0.15);

Length right_of(const Patch& p) {
  return p.x + p.w;
}
Length top_of(const Patch& p) {
  return p.z + p.h;
}

std::optional<Patch> met(const Patch& a, const Patch& b) {
  const Length x = std::max(a.x, b.x), z = std::max(a.z, b.z);
  const Length w = std::min(right_of(a), right_of(b)) - x;
  const Length h = std::min(top_of(a), top_of(b)) - z;
  if (w <= Length{} || h <= Length{}) return std::nullopt;
  return Patch{x, z, w, h};
}

bool holds(const Patch& p, Length x, Length z) {
  return x >= p.x && x <= right_of(p) && z >= p.z && z <= top_of(p);
}

// Bay by bay, as high as concrete came.
std::vector<Patch> concrete_of(const PourState& state, std::size_t element) {
  const Element& planned = state.plan->elements[element];
  std::vector<Patch> bays;
  bays.reserve(planned.bays.size());
  Length x;
  for (std::size_t bay = 0; bay < planned.bays.size(); ++bay) {
    bays.push_back({x, Length{}, planned.bays[bay], state.elements[element].tops[bay].standing()});
    x += planned.bays[bay];
  }
  return bays;
}

// A lift's bands, bay by bay; what was never placed has none.
std::vector<Patch> lift_patches(const PourState& state, std::size_t element, int lift, bool joint) {
  std::vector<Patch> patches;
  const std::vector<Patch> bays = concrete_of(state, element);
  for (const LiftState& placed : state.elements[element].lifts) {
    if (placed.lift != lift) continue;
    for (std::size_t bay = 0; bay < bays.size(); ++bay) {
      Length from = placed.bottom[bay];
      if (joint) from = std::max(Length{}, from - kBelowJoint);
      patches.push_back({bays[bay].x, from, bays[bay].w, placed.top[bay] - from});
    }
  }
  return patches;
}

// What is in all of one list and in some of the other.
std::vector<Patch> where_both(const std::vector<Patch>& some, const std::vector<Patch>& others) {
  std::vector<Patch> both;
  for (const Patch& a : some) {
    for (const Patch& b : others) {
      if (const auto meets = met(a, b)) both.push_back(*meets);
    }
  }
  return both;
}

// A closed line cut along one edge of a rectangle: what lies `inside` stays.
template <class Inside, class Cross>
std::vector<FacePoint> cut(const std::vector<FacePoint>& line, const Inside& inside,
                           const Cross& cross) {
  std::vector<FacePoint> kept;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const FacePoint& a = line[i];
    const FacePoint& b = line[(i + 1) % line.size()];
    if (inside(a)) kept.push_back(a);
    if (inside(a) != inside(b)) kept.push_back(cross(a, b));
  }
  return kept;
}

FacePoint at_x(const FacePoint& a, const FacePoint& b, Length x) {
  return {x, a.z + (b.z - a.z) * ((x - a.x) / (b.x - a.x))};
}
FacePoint at_z(const FacePoint& a, const FacePoint& b, Length z) {
  return {a.x + (b.x - a.x) * ((z - a.z) / (b.z - a.z)), z};
}

Area area_within(std::vector<FacePoint> line, const Patch& cell) {
  const auto x_at = [](Length x) {
    return [x](const FacePoint& a, const FacePoint& b) { return at_x(a, b, x); };
  };
  const auto z_at = [](Length z) {
    return [z](const FacePoint& a, const FacePoint& b) { return at_z(a, b, z); };
  };
  const Length left = cell.x, right = right_of(cell), low = cell.z, high = top_of(cell);
  line = cut(
      line, [&](const FacePoint& p) { return p.x >= left; }, x_at(left));
  line = cut(
      line, [&](const FacePoint& p) { return p.x <= right; }, x_at(right));
  line = cut(
      line, [&](const FacePoint& p) { return p.z >= low; }, z_at(low));
  line = cut(
      line, [&](const FacePoint& p) { return p.z <= high; }, z_at(high));
  return line.size() < 3 ? Area{} : trade::area_of(line);
}

std::vector<const event::Blemish*> blemishes_on(const PourState& state, std::size_t element,
                                                Side side) {
  const ElementId& id = state.plan->elements[element].id;
  std::vector<const event::Blemish*> all;
  for (const EventRef ref : state.blemishes) {
    const auto* seen = std::get_if<event::Blemish>(&state.log[ref].event.what);
    if (seen != nullptr && seen->element == id && seen->side == side) all.push_back(seen);
  }
  return all;
}

// The face in rectangles, none of which an edge of anything crosses: each is concrete or not,
// spoken of or not.
class Cells {
 public:
  void edges_of(std::span<const Patch> patches) {
    for (const Patch& p : patches) edges_of(p);
  }
  void edges_of(const Patch& p) {
    xs_.insert(xs_.end(), {p.x, right_of(p)});
    zs_.insert(zs_.end(), {p.z, top_of(p)});
  }
  template <class With>
  void visit(const With& with) {
    sort(xs_);
    sort(zs_);
    for (std::size_t i = 0; i + 1 < xs_.size(); ++i) {
      for (std::size_t j = 0; j + 1 < zs_.size(); ++j) {
        with(Patch{xs_[i], zs_[j], xs_[i + 1] - xs_[i], zs_[j + 1] - zs_[j]});
      }
    }
  }

 private:
  static void sort(std::vector<Length>& edges) {
    std::sort(edges.begin(), edges.end());
    edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  }
  std::vector<Length> xs_, zs_;
};

bool any_holds(std::span<const Patch> patches, const Patch& cell) {
  const Length x = cell.x + cell.w / 2.0, z = cell.z + cell.h / 2.0;
  return std::any_of(patches.begin(), patches.end(),
                     [&](const Patch& p) { return holds(p, x, z); });
}

Area blemished_of(const std::vector<const event::Blemish*>& blemishes, const Patch& cell) {
  const Area whole = cell.w * cell.h;
  Area drawn;
  for (const event::Blemish* blemish : blemishes) {
    if (!any_holds({&blemish->patch, 1}, cell)) continue;
    if (blemish->outline.empty()) return whole;
    drawn += area_within(blemish->outline, cell);
  }
  return std::min(drawn, whole);
}

// Whether what is found is about the concrete, and about some of it.
bool of_a_place(const Finding& finding, std::size_t element) {
  if (finding.element != element) return false;
  const RuleCard* card = find_card(finding.rule);
  if (card == nullptr || card->cost == Cost::paper || card->harm != Harm::work) return false;
  return finding.lift || finding.bay || finding.row;
}

}  // namespace

std::optional<double> FaceScore::foretold() const {
  if (blemished <= Area{}) return std::nullopt;
  return in_square_metres(blemished_spoken) / in_square_metres(blemished);
}
std::optional<double> FaceScore::spoken_share() const {
  if (face <= Area{}) return std::nullopt;
  return in_square_metres(spoken) / in_square_metres(face);
}

FaceLook look_of_face(const PourState& state, std::size_t element, Side side) {
  const ElementId& id = state.plan->elements[element].id;
  for (const EventRef ref : state.inspections) {
    const auto& told = std::get<event::Inspect>(state.log[ref].event.what);
    if (told.element == id && told.side == side) return FaceLook::inspected;
  }
  if (!blemishes_on(state, element, side).empty()) return FaceLook::begun;
  const bool off = std::any_of(state.strips.begin(), state.strips.end(), [&](EventRef ref) {
    const auto& strip = std::get<event::Strip>(state.log[ref].event.what);
    return strip.element == id && strip.side == side;
  });
  return off ? FaceLook::stripped : FaceLook::standing;
}

std::vector<Patch> spoken_of(const PourState& state, const Finding& finding, std::size_t element,
                             Side side) {
  if (element >= state.elements.size() || !of_a_place(finding, element)) return {};
  const Element& planned = state.plan->elements[element];
  const bool thin = planned.thickest() <= kThinSection;
  if (finding.side && *finding.side != side && !(thin && finding.row)) return {};
  std::vector<Patch> places = concrete_of(state, element);
  if (finding.bay) {
    if (*finding.bay >= places.size()) return {};
    places = {places[*finding.bay]};
  }
  if (finding.lift) {
    const bool joint = find_card(finding.rule)->asks == Asks::joint_decision;
    places = where_both(places, lift_patches(state, element, *finding.lift, joint));
  }
  if (finding.row) {
    if (*finding.row >= planned.rows.size()) return {};
    const Row& row = planned.rows[*finding.row];
    if (row.side != side && !thin) return {};
    const RowSpan span = span_of(planned, row);
    places =
        where_both(places, {{span.left, span.low, span.right - span.left, span.high - span.low}});
  }
  return places;
}

std::vector<std::size_t> speaking_of(const PourState& state, const CheckReport& report,
                                     std::size_t element, Side side, Length x, Length z) {
  std::vector<std::size_t> which;
  for (std::size_t i = 0; i < report.findings.size(); ++i) {
    const auto places = spoken_of(state, report.findings[i], element, side);
    if (std::any_of(places.begin(), places.end(), [&](const Patch& p) { return holds(p, x, z); })) {
      which.push_back(i);
    }
  }
  return which;
}

FaceScore score_face(const PourState& state, const CheckReport& report, std::size_t element,
                     Side side) {
  FaceScore score;
  if (element >= state.elements.size()) return score;
  score.look = look_of_face(state, element, side);
  const auto concrete = concrete_of(state, element);
  const auto& openings = state.plan->elements[element].openings;
  const auto blemishes = blemishes_on(state, element, side);
  std::vector<Patch> spoken;
  for (const Finding& finding : report.findings) {
    const auto places = spoken_of(state, finding, element, side);
    spoken.insert(spoken.end(), places.begin(), places.end());
  }
  Cells cells;
  cells.edges_of(concrete);
  cells.edges_of(openings);
  cells.edges_of(spoken);
  for (const event::Blemish* blemish : blemishes) cells.edges_of(blemish->patch);
  cells.visit([&](const Patch& cell) {
    if (!any_holds(concrete, cell) || any_holds(openings, cell)) return;
    const Area all = cell.w * cell.h;
    const Area bad = blemished_of(blemishes, cell);
    score.face += all;
    score.blemished += bad;
    if (!any_holds(spoken, cell)) return;
    score.spoken += all;
    score.blemished_spoken += bad;
  });
  return score;
}

}  // namespace rb
