// How much of a face got too little: shares over the bands of a lift, and the worst patch.
#include <algorithm>
#include <map>

#include "trade/dose/dose.h"

namespace rb::trade {

namespace {

// Sums of spans that should be equal differ by rounding; less than this under the least dose is not
// under it.
constexpr Seconds kRounding{1e-6};

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

DoseField filled(const DoseField& field, const std::vector<std::vector<Band>>& bands) {
  DoseField full = field;
  for (DoseStrip& strip : full.strips) {
    if (strip.bay >= bands.size()) continue;
    for (const Band& band : bands[strip.bay]) {
      std::vector<DosePiece> pieces;
      for (const DosePiece& whole : strip.pieces) {
        const Length low = std::clamp(band.from, whole.z0, whole.z1);
        const Length high = std::clamp(band.to, whole.z0, whole.z1);
        if (const auto below = clipped(whole, {whole.z0, low})) pieces.push_back(*below);
        if (high > low) pieces.push_back({low, high, kFullDose, kFullDose});
        if (const auto above = clipped(whole, {std::max(low, high), whole.z1})) {
          pieces.push_back(*above);
        }
      }
      strip.pieces = DosePieces{std::move(pieces)};
    }
  }
  return full;
}

DoseField inside(const DoseField& field, const Patch& patch) {
  DoseField part;
  const Band band{patch.z, patch.z + patch.h};
  for (const DoseStrip& strip : field.strips) {
    const Length x0 = std::max(strip.x0, patch.x);
    const Length x1 = std::min(strip.x1, patch.x + patch.w);
    if (x1 <= x0) continue;
    std::vector<DosePiece> pieces;
    for (const DosePiece& whole : strip.pieces) {
      if (const auto piece = clipped(whole, band)) pieces.push_back(*piece);
    }
    part.strips.push_back({x0, x1, strip.bay, DosePieces{std::move(pieces)}});
  }
  return part;
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

}  // namespace rb::trade
