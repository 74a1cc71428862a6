// top-fell: a top was read lower than the one before.
#include "check/rule.h"

namespace rb {

namespace {

void look_top_fell(const Look& look, const Rule& rule, Findings& out) {
  for (const TopReading& reading : look.state.readings) {
    if (!reading.fell()) continue;
    Finding f = found(rule);
    f.element = reading.element;
    f.bay = reading.bay;
    f.from = f.to = reading.at;
    f.measured = amount(reading.read);
    f.limit = amount(reading.stood);
    f.ref = reading.ref;
    f.sentence =
        said("{element} bay {bay}: read {measured} where {limit} stood; the higher stands");
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kTopFell{
    {"top-fell", said("Top read lower than before"), Severity::mend, Cost::paper,
     "a wrong reading, or concrete lost through a leaking or moving form",
     said("common practice, no source"), "a top never falls", "nobody",
     said("Look at the form for leaks and movement first; then correct the reading that "
          "is wrong")},
    look_top_fell};

}  // namespace rb
