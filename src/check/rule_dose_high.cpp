// dose-high: a spot was vibrated far longer than it needs.
#include <fmt/format.h>

#include "check/rule.h"

namespace rb {

namespace {

constexpr double kTimesMost = 4;

void look_dose_high(const Look& look, const Rule& rule, Findings& out) {
  const Seconds limit = look.plan().limits.dose_max.value * kTimesMost;
  for (std::size_t e = 0; e < look.fields.size(); ++e) {
    if (!look.fields[e]) continue;
    Seconds most{};
    const trade::DoseStrip* where = nullptr;
    Length height;
    for (const trade::DoseStrip& strip : look.fields[e]->strips) {
      for (const trade::DosePiece& piece : strip.pieces) {
        if (std::max(piece.d0, piece.d1) <= most) continue;
        most = std::max(piece.d0, piece.d1);
        where = &strip;
        height = piece.d0 > piece.d1 ? piece.z0 : piece.z1;
      }
    }
    if (where == nullptr || most <= limit) continue;
    Finding f = found(rule);
    f.element = e;
    f.bay = where->bay;
    f.measured = in_seconds(most);
    f.limit = in_seconds(limit);
    f.unit = "s";
    f.says = fmt::format("{}: {:.0f} s at x {:.2f} m, z {:.2f} m in bay {}, over {:.0f} s",
                         look.plan().elements[e].id.text, *f.measured, in_metres(where->x0),
                         in_metres(height), where->bay + 1, *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kDoseHigh{
    {"dose-high", Weight::note, "mortar driven to the form and stone sunk: streaks, segregation",
     "common practice, no source", "4 x dose_max_s (480 s)",
     "plan, by the engineer, through dose_max_s",
     "Move the motors up sooner; look for streaks when stripped"},
    look_dose_high};

}  // namespace rb
