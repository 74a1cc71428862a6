// insert-sparse: insertions too far apart, or not down into the lift below.
#include <fmt/format.h>

#include "check/rule.h"
#include "trade/internal_vibrator.h"

namespace rb {

namespace {

// The plan's reader lets no other group in than 1 to 5.
Length least_radius(int group) {
  return trade::internal_vibrators().at(static_cast<std::size_t>(group) - 1).radius.least;
}

void look_insert_sparse(const Look& look, const Rule& rule, Findings& out) {
  const Limits& limits = look.plan().limits;
  for (const InsertState& insert : look.state.inserts) {
    const Length widest = least_radius(insert.what.group) * limits.insert_spacing_factor.value;
    const bool wide = over(insert.what.spacing, widest);
    const bool shallow =
        insert.what.lift > 1 && under(insert.what.depth_below, limits.knit_depth.value);
    if (!wide && !shallow) continue;
    Finding f = found(rule);
    f.element = insert.element;
    f.lift = insert.what.lift;
    f.bay = insert.bay;
    f.from = f.to = insert.at;
    f.measured = in_metres(wide ? insert.what.spacing : insert.what.depth_below);
    f.limit = in_metres(wide ? widest : limits.knit_depth.value);
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
