// strip-leave: a face was stripped without the leave that the plan asks for.
#include "check/face/stripped.h"
#include "check/rule.h"

namespace rb {

namespace {

const char* sentence_of(StripLeave leave) {
  switch (leave) {
    case StripLeave::before_concrete:
      return said(
          "{element}: stripped on leave {person} gave before its last concrete came; the plan asks "
          "for leave to strip after it");
    case StripLeave::no_role:
      return said(
          "{element}: stripped on leave of {person}, whom the plan gives no role; the plan asks "
          "for "
          "leave to strip");
    default:
      return said("{element}: stripped with no leave logged; the plan asks for leave to strip");
  }
}

void look_strip_leave(const Look& look, const Rule& rule, Findings& out) {
  for (const Stripped& strip : stripped(look)) {
    if (!strip.verdict.without_leave()) continue;
    Finding f = found(rule);
    f.element = strip.element;
    f.side = strip.side;
    f.from = strip.at;
    f.ref = strip.ref;
    f.source = {.code = Source::Code::plan, .field = "strip_permit"};
    f.facts = {{"person", leave_by(look, strip.verdict)}};
    f.sentence = sentence_of(strip.verdict.leave);
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kStripLeave{
    {"strip-leave", said("Stripped without leave"), Severity::stop, Cost::lasting,
     "a face stripped that nobody who answers for it has judged, and the people under it",
     said("the plan's; without it no leave is asked for (our own choice)"),
     "strip_permit of the element: leave after its last concrete came and before it is stripped, "
     "for the face or for both, by someone whom the plan gives a role; none asked by default",
     "plan, by the engineer",
     said("Keep clear and strip no further; have whoever answers for it look at what stands"),
     Harm::people},
    look_strip_leave};

}  // namespace rb
