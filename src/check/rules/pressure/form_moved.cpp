// form-moved: the form moved or a motor came loose.
#include "check/rule.h"

namespace rb {

namespace {

// When the pour went on after it. None: it has not.
std::optional<Seconds> resumed(const PourState& state, Seconds moved) {
  for (const HoldState& hold : state.holds) {
    if (hold.to && hold.from <= moved && *hold.to >= moved) return hold.to;
  }
  return std::nullopt;
}

void look_form_moved(const Look& look, const Rule& rule, Findings& out) {
  for (const MovedState& moved : look.state.moved) {
    Finding f = found(rule);
    f.element = moved.element;
    f.from = moved.at;
    f.to = resumed(look.state, moved.at).value_or(look.asof.at);
    f.ref = moved.ref;
    f.sentence = moved.what.thing == event::Moving::form
                     ? said("{element}: the form moved. Clear the area")
                     : said("{element}: a motor came loose. Clear the area");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kFormMoved{
    {"form-moved", said("Form moved or motor loose"), Severity::stop, Cost::lasting,
     "people under a form that gives way or a motor that falls",
     said("common practice, no source; local codes and the form designer decide"), "none moves",
     "nobody",
     said(
         "Clear the area, rest the rows, stop placing. Nobody goes near before whoever answers for "
         "the form says so; resume only then"),
     Harm::now},
    look_form_moved};

}  // namespace rb
