// insert-missing: a thick section without internal vibration logged for a lift and bay.
#include "check/rule.h"
#include "check/vibrated.h"

namespace rb {

namespace {

void look_insert_missing(const Look& look, const Rule& rule, Findings& out) {
  for (const LiftReport& report : look.lifts) {
    const Element& element = look.element(report);
    if (element.thickest() <= kThinSection) continue;
    if (!look.settled(report)) continue;
    const LiftState& lift = look.lift(report);
    const auto bare = bare_bays(look, report);  // told by a rule of their own
    for (std::size_t bay = 0; bay < lift.top.size(); ++bay) {
      if (lift.top[bay] <= lift.bottom[bay] || inserted(look, report, bay)) continue;
      if (bare.has(bay)) continue;
      Finding f = found(rule);
      f.element = report.element;
      f.lift = report.lift;
      f.bay = bay;
      f.from = report.placed_from;
      f.to = report.placed_to;
      f.measured = amount(element.thickest());
      f.limit = amount(kThinSection);
      f.ref = lift.ref;
      f.sentence = said(
          "{element} lift {lift} bay {bay}: no insertion logged in a section {measured} thick");
      out.push_back(std::move(f));
    }
  }
}

}  // namespace

extern const Rule kInsertMissing{
    {"insert-missing", said("Insertions missing"), Severity::mend, Cost::perhaps,
     "the core of a thick section, which form vibrators do not reach",
     said(
         "the Concrete Society puts form vibration at sections under about {300 mm}; ACI 309R says "
         "much the same (from memory)"),
     "sections over {0.3 m} need insertions in each lift and bay", "nobody",
     said("Insert in that bay while it is plastic; log it")},
    look_insert_missing};

}  // namespace rb
