// unsigned: a closed pour that the foreman or the inspector has not signed.
#include "check/rule.h"

namespace rb {

namespace {

void look_unsigned(const Look& look, const Rule& rule, Findings& out) {
  if (!look.state.closed) return;
  for (const char* role : {"foreman", "inspector"}) {
    bool signed_by = false;
    for (const EventRef ref : look.state.signs) {
      // Signed before it was closed it was signed before it was whole.
      const LogEntry& sign = look.state.log[ref];
      signed_by |=
          std::get<event::Sign>(sign.event.what).role == role && sign.when >= *look.state.closed;
    }
    if (signed_by) continue;
    Finding f = found(rule);
    f.from = look.state.clock(*look.state.closed);
    f.sentence = said("the pour is closed and not signed by the {role}");
    f.facts = {{"role", Term{role}}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kUnsigned{
    {"unsigned", said("Not signed yet"), Severity::note, "a record nobody stands for",
     said("common practice, no source"), "foreman and inspector sign a closed pour", "nobody",
     said("Review the record and sign it")},
    look_unsigned};

}  // namespace rb
