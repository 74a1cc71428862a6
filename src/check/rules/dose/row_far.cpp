// row-far: placed concrete that no row of the plan reaches.
#include <algorithm>

#include "check/rule.h"

namespace rb {

namespace {

struct Gap {
  Length from, to;
};

// The widest part of [0, end] that no span covers.
Gap widest_gap(std::vector<Gap> covered, Length end) {
  std::sort(covered.begin(), covered.end(),
            [](const Gap& a, const Gap& b) { return a.from < b.from; });
  Gap widest{};
  Length reached;
  const auto look_at_gap = [&](Length to) {
    if (to - reached > widest.to - widest.from) widest = {reached, to};
  };
  for (const Gap& span : covered) {
    look_at_gap(std::min(span.from, end));
    reached = std::max(reached, span.to);
    if (reached >= end) return widest;
  }
  look_at_gap(end);
  return widest;
}

void report(const Rule& rule, Findings& out, std::size_t element, Side side,
            std::optional<std::size_t> row, Gap gap, const char* along) {
  if (!over(gap.to - gap.from, trade::kDoseCell)) return;
  Finding f = found(rule);
  f.element = element;
  f.row = row;
  f.side = side;
  f.measured = amount(gap.to - gap.from);
  f.limit = amount(trade::kDoseCell);
  f.sentence =
      row ? said("{element} {side} side, row {row}: no motor reaches {axis} {gap_from} to {gap_to}")
          : said("{element} {side} side: no motor reaches {axis} {gap_from} to {gap_to}");
  f.facts = {{"axis", Term{along}}, {"gap_from", amount(gap.from)}, {"gap_to", amount(gap.to)}};
  out.push_back(std::move(f));
}

void look_row_far(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t e = 0; e < look.state.elements.size(); ++e) {
    const Element& element = look.plan().elements[e];
    Length top;
    for (const auto& curve : look.state.elements[e].tops) top = std::max(top, curve.standing());
    if (top.value() <= 0) continue;
    for (const Side side : judged_sides(element)) {
      std::vector<Gap> up;
      for (std::size_t r = 0; r < element.rows.size(); ++r) {
        const Row& row = element.rows[r];
        if (row.side != side) continue;
        std::vector<Gap> along;
        Length reach = reach_up(element, row.motors.front());
        for (const Motor& motor : row.motors) {
          along.push_back({motor.x - motor.reach_x, motor.x + motor.reach_x});
          reach = std::min(reach, reach_up(element, motor));
        }
        up.push_back({row.z - reach, row.z + reach});
        report(rule, out, e, side, r, widest_gap(along, element.length), "x");
      }
      report(rule, out, e, side, std::nullopt, widest_gap(up, top), "z");
    }
  }
}

}  // namespace

extern const Rule kRowFar{
    {"row-far", said("Rows too far apart"), Severity::mend, Cost::perhaps,
     "concrete between rows or motors that none of them reaches",
     said("the plan's reach (reach_x, reach_z)"), "no gap wider than 50 mm below the top",
     "plan, by the engineer", said("Hang a row or a motor between them, or insert there; log it")},
    look_row_far};

}  // namespace rb
