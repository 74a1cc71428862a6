// face-low: insertions consolidated a lift, but its face got less from the form vibrators than it
// needs. Where the concrete itself got too little dose-low tells it.
#include "check/shortfall.h"

namespace rb {

namespace {

void look_face_low(const Look& look, const Rule& rule, Findings& out) {
  for (std::size_t i = 0; i < look.lifts.size(); ++i) {
    const LiftReport& report = look.lifts[i];
    const double most = look.plan().limits.under_share_max.value;
    if (!report.under_share || *report.under_share > most || !look.settled(report)) continue;
    const auto some = face_shortfall(look, i);
    if (!some) continue;
    Finding f = shortfall_finding(look, rule, i, *some);
    f.bay.reset();  // the rows leave all bays alike as a rule
    f.sentence = said(
        "{element} lift {lift}: {measured} of its face got less than {dose_min} from the rows "
        "(limit {limit}); worst patch {w} x {h} at x {x}, z {z}, least {least}");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kFaceLow{
    {"face-low", said("Face vibrated too little"), Severity::mend, Cost::face,
     "bug holes and sand streaks: internal vibrators do little for the skin at the form",
     said("common practice, no source (90 to 120 s a lift with form vibrators)"),
     "dose_min_s 90 s from the rows over all but under_share_max 2 % of a lift",
     "plan, by the engineer",
     said(
         "While it is still plastic run the rows that reach it; else mark the face to be looked at "
         "when stripped")},
    look_face_low};

}  // namespace rb
