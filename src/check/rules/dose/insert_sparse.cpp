// insert-sparse: insertions too far apart, or not down into the lift below.
#include "check/rule.h"
#include "check/vibrated.h"

namespace rb {

namespace {

void look_insert_sparse(const Look& look, const Rule& rule, Findings& out) {
  const Limits& limits = look.plan().limits;
  for (const InsertState& insert : look.state.inserts) {
    const Length widest = group_of(insert).radius.least * limits.insert_spacing_factor.value;
    const bool wide = over(insert.what.spacing, widest);
    const bool shallow =
        insert.what.lift > 1 && under(insert.what.depth_below, limits.knit_depth.value);
    if (!wide && !shallow) continue;
    Finding f = found(rule);
    f.element = insert.element;
    f.lift = insert.what.lift;
    f.bay = insert.bay;
    f.from = f.to = insert.at;
    f.measured = amount(wide ? insert.what.spacing : insert.what.depth_below);
    f.limit = amount(wide ? widest : limits.knit_depth.value);
    f.source =
        limit_source(rule, wide ? limits.insert_spacing_factor.from : limits.knit_depth.from);
    f.ref = insert.ref;
    f.sentence = wide ? said("{element} lift {lift}: insertions apart {measured}, limit {limit}")
                      : said(
                            "{element} lift {lift}: insertions into the lift below {measured}, "
                            "limit {limit}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kInsertSparse{
    {"insert-sparse", said("Insertions too far apart"), Severity::mend,
     "unvibrated concrete between insertions; lifts not knitted",
     said("ACI 309R: spacing 1.5 x radius of action, {150 mm} into the lift below (from memory; "
          "radii "
          "read)"),
     "insert_spacing_factor 1.5 x the group's least radius; knit_depth 0.15 m",
     "plan, by the engineer", said("Insert closer together and down into the lift below")},
    look_insert_sparse};

}  // namespace rb
