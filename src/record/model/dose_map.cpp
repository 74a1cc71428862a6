#include "record/model/dose_map.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "pour/log/log_entry.h"

namespace rb {

namespace {

constexpr double kSame = 1e-9;        // metres
const Seconds kHair = seconds(1e-6);  // a run of exactly the minimum counts as the minimum

bool same(double a, double b) {
  return std::abs(a - b) < kSame;
}

// Joins neighbours of one class: first along x, then up z.
void join(std::vector<DoseBand>& bands) {
  const auto pass = [&bands](auto order, auto touch, auto grow) {
    std::sort(bands.begin(), bands.end(),
              [&](const DoseBand& a, const DoseBand& b) { return order(a) < order(b); });
    std::vector<DoseBand> joined;
    for (const DoseBand& band : bands) {
      if (!joined.empty() && touch(joined.back(), band)) {
        grow(joined.back(), band);
      } else {
        joined.push_back(band);
      }
    }
    bands = std::move(joined);
  };
  pass(
      [](const DoseBand& b) {
        return std::tuple{std::llround(b.z / kSame), b.x};
      },
      [](const DoseBand& a, const DoseBand& b) {
        return same(a.z, b.z) && same(a.h, b.h) && same(a.x + a.w, b.x);
      },
      [](DoseBand& a, const DoseBand& b) { a.w = b.x + b.w - a.x; });
  pass(
      [](const DoseBand& b) {
        return std::tuple{std::llround(b.x / kSame), b.z};
      },
      [](const DoseBand& a, const DoseBand& b) {
        return same(a.x, b.x) && same(a.w, b.w) && same(a.z + a.h, b.z);
      },
      [](DoseBand& a, const DoseBand& b) { a.h = b.z + b.h - a.z; });
}

}  // namespace

SideDose side_dose(std::size_t element, Side side, const trade::DoseField& field) {
  SideDose dose{element, side, {}};
  for (const trade::DoseStrip& strip : field.strips) {
    for (const trade::DosePiece& piece : strip.pieces) {
      dose.patches.push_back(
          {strip.x0, piece.z0, strip.x1 - strip.x0, piece.z1 - piece.z0, piece.d0, piece.d1});
    }
  }
  return dose;
}

DoseMap make_dose_map(const PourState& state, const SideDose& field) {
  const Element& element = state.plan->elements[field.element];
  DoseMap map;
  map.element = element.id.text;
  map.side = field.side;
  map.length = element.length;
  map.height = element.rise_height();
  Length edge = metres(0);
  map.bay_edges.push_back(edge);
  for (const Length& bay : element.bays) map.bay_edges.push_back(edge += bay);
  if (field.element < state.elements.size()) {
    for (const LiftState& lift : state.elements[field.element].lifts) {
      map.lifts.push_back({lift.lift, lift.top});
    }
  }
  for (const Row& row : element.rows) {
    if (row.side != field.side) continue;
    DoseMapRow drawn{row.id.text, row.z, {}};
    for (const Motor& motor : row.motors) drawn.motors.push_back(motor.x);
    map.rows.push_back(std::move(drawn));
  }
  map.openings = element.openings;
  int number = 0;  // as in the record's list, which has those of all faces
  for (const EventRef ref : state.blemishes) {
    const auto* seen = std::get_if<event::Blemish>(&state.log[ref].event.what);
    if (seen == nullptr) continue;
    ++number;
    if (seen->element == element.id && seen->side == field.side) {
      map.blemishes.push_back({number, seen->patch});
    }
  }
  map.patches = field.patches;
  map.dose_min = state.plan->limits.dose_min.value;
  map.dose_max = state.plan->limits.dose_max.value;
  return map;
}

std::array<Seconds, 4> dose_class_edges(const DoseMap& map) {
  return {map.dose_min / 2, map.dose_min, map.dose_max, 4 * map.dose_max};
}

std::size_t dose_class(const DoseMap& map, Seconds dose) {
  const auto edges = dose_class_edges(map);
  if (dose <= kHair) return 0;
  if (dose < edges[0] - kHair) return 1;
  if (dose < edges[1] - kHair) return 2;
  if (dose <= edges[2] + kHair) return 3;
  return dose <= edges[3] + kHair ? 4 : 5;
}

std::array<std::string, kDoseClasses> dose_legend(const DoseMap& map, Language language) {
  const auto edges = dose_class_edges(map);
  const auto say = [&](Said english, std::size_t from, std::size_t to) {
    return words_of(Saying{english,
                           {{"from", fmt::format("{:g}", edges.at(from).count())},
                            {"to", fmt::format("{:g}", edges.at(to).count())}}},
                    Voice{.language = language});
  };
  const Said between = said("{from} to {to} s");
  return {told(language, said("none")), say(said("under {to} s"), 0, 0),
          say(between, 0, 1),           say(between, 1, 2),
          say(between, 2, 3),           say(said("over {from} s"), 3, 3)};
}

std::array<std::vector<DoseBand>, kDoseClasses> dose_bands(const DoseMap& map) {
  const auto edges = dose_class_edges(map);
  std::array<std::vector<DoseBand>, kDoseClasses> bands;
  for (const DoseMapPatch& patch : map.patches) {
    const double low = patch.dose_low.count();
    const double high = patch.dose_high.count();
    std::vector<double> cuts{0.0, 1.0};
    for (const Seconds edge : edges) {
      const double e = edge.count();
      if (e > std::min(low, high) && e < std::max(low, high)) {
        cuts.push_back((e - low) / (high - low));
      }
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      const double from = cuts[i];
      const double to = cuts[i + 1];
      if (to - from < kSame) continue;
      const Seconds middle = seconds(low + (high - low) * (from + to) / 2);
      const double h = in_metres(patch.h);
      bands.at(dose_class(map, middle))
          .push_back({in_metres(patch.x), in_metres(patch.z) + from * h, in_metres(patch.w),
                      (to - from) * h});
    }
  }
  for (auto& one : bands) join(one);
  return bands;
}

}  // namespace rb
