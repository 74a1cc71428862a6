#include "check/lift_look.h"

#include <algorithm>

namespace rb {

namespace {

MostShaken most_shaken(const trade::DoseField& field) {
  MostShaken most;
  for (const trade::DoseStrip& strip : field.strips) {
    for (const trade::DosePiece& piece : strip.pieces) {
      const Seconds dose = std::max(piece.d0, piece.d1);
      if (dose <= most.dose) continue;
      most = {dose, strip.bay, strip.x0, piece.d0 > piece.d1 ? piece.z0 : piece.z1};
    }
  }
  return most;
}

// A row that ends where the lift begins works on none of it.
bool worked(const trade::DosePiece& piece) {
  return piece.z1 - piece.z0 > millimetres(1) && (piece.d0 > Seconds{} || piece.d1 > Seconds{});
}

std::vector<bool> shaken_bays(const trade::DoseField& field, std::size_t bays) {
  std::vector<bool> shaken(bays, false);
  for (const trade::DoseStrip& strip : field.strips) {
    if (shaken[strip.bay]) continue;
    shaken[strip.bay] = std::any_of(strip.pieces.begin(), strip.pieces.end(), worked);
  }
  return shaken;
}

}  // namespace

void LiftLook::look_at(const trade::Face& face, std::vector<trade::Band> in_bands, Seconds least,
                       std::vector<std::vector<trade::Band>> by_insertions) {
  trade::Face now = trade::part_for(face, in_bands);
  if (!joints.empty() && least == dose_min && in_bands == bands && now == part &&
      by_insertions == healed) {
    return;
  }
  part = std::move(now);
  bands = std::move(in_bands);
  dose_min = least;
  healed = std::move(by_insertions);
  field = trade::dose_field(part, bands);
  judged = trade::filled(field, healed);
  shares = trade::dose_shares(field, bands, dose_min);
  rows_under = shares.under;
  shares.under = trade::dose_shares(judged, bands, dose_min).under;
  most = most_shaken(field);
  shaken = shaken_bays(field, bands.size());
  worst.reset();
  joints.assign(bands.size(), std::nullopt);
  knitted.reset();
}

WorstPlace worst_place(const trade::DoseField& field, const std::vector<trade::Band>& bands,
                       Seconds dose_min) {
  WorstPlace worst;
  Area largest;
  for (std::size_t bay = 0; bay < bands.size(); ++bay) {
    std::vector<trade::Band> only(bands.size(), trade::Band{});
    only[bay] = bands[bay];
    const Area under = trade::dose_shares(field, only, dose_min).under;
    if (under > largest) {
      largest = under;
      worst.bay = bay;
    }
  }
  if (const auto patch = trade::worst_patch(field, bands, dose_min)) worst.patch = *patch;
  return worst;
}

const WorstPlace& LiftLook::worst_place() {
  if (!worst) worst = rb::worst_place(judged, bands, dose_min);
  return *worst;
}

}  // namespace rb
