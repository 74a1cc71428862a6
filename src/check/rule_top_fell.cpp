// top-fell: a top was read lower than the one before.
#include <fmt/format.h>

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
    f.measured = in_metres(reading.read);
    f.limit = in_metres(reading.stood);
    f.unit = "m";
    f.ref = reading.ref;
    f.says = fmt::format("{} bay {}: read {:.2f} m where {:.2f} m stood; the higher stands",
                         look.plan().elements[reading.element].id.text, reading.bay + 1,
                         *f.measured, *f.limit);
    out.push_back(std::move(f));
  }
}

}  // namespace

const Rule kTopFell{
    {"top-fell", Weight::mend, "a wrong reading, or concrete lost through a leaking or moving form",
     "common practice, no source", "a top never falls", "nobody",
     "Look at the form for leaks and movement first; then correct the reading that "
     "is wrong"},
    look_top_fell};

}  // namespace rb
