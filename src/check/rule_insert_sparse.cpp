// insert-sparse: insertions too far apart, or not down into the lift below.
#include <fmt/format.h>

#include "check/rule.h"
#include "trade/internal_vibrator.h"

namespace rb {

namespace {

void look_insert_sparse(const Look& look, const Rule& rule, Findings& out) {
  const Limits& limits = look.plan().limits;
  for (const InsertState& insert : look.state.inserts) {
    const auto widest =
        trade::insert_spacing(insert.what.group, limits.insert_spacing_factor.value);
    const bool wide = widest && insert.what.spacing > *widest * (1 + 1e-9);
    const bool shallow =
        insert.what.lift > 1 && insert.what.depth_below < limits.knit_depth.value * (1 - 1e-9);
    if (!wide && !shallow) continue;
    Finding f = found(rule);
    f.element = insert.element;
    f.lift = insert.what.lift;
    f.bay = insert.bay;
    f.from = f.to = insert.at;
    f.measured = in_metres(wide ? insert.what.spacing : insert.what.depth_below);
    f.limit = in_metres(wide ? *widest : limits.knit_depth.value);
    f.unit = "m";
    f.source =
        limit_source(rule, wide ? limits.insert_spacing_factor.from : limits.knit_depth.from);
    f.ref = insert.ref;
    f.says = fmt::format("{} lift {}: insertions {} {:.2f} m, limit {:.2f} m",
                         look.plan().elements[insert.element].id.text, insert.what.lift,
                         wide ? "apart" : "into the lift below", *f.measured, *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kInsertSparse{
    {"insert-sparse", Weight::mend, "unvibrated concrete between insertions; lifts not knitted",
     "ACI 309R: spacing 1.5 x radius of action, 150 mm into the lift below (from memory; radii "
     "read)",
     "insert_spacing_factor 1.5 x the group's least radius; knit_depth 0.15 m",
     "plan, by the engineer", "Insert closer together and down into the lift below"},
    look_insert_sparse};

}  // namespace rb
