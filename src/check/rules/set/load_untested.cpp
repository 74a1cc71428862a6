// load-untested: a mix was placed without a temperature measured on it by the end of its first
// load.
#include <algorithm>

#include "check/rule.h"

namespace rb {

namespace {

// The first of a mix that went into a form, of which ticket. Null: none has.
struct First {
  const TruckState* truck = nullptr;
  const PartState* part = nullptr;
};
First first_load(const PourState& state, const MixId& mix) {
  First first;
  for (const TruckState& truck : state.trucks) {
    if (!truck.what || truck.what->mix != mix) continue;
    for (const PartState& part : truck.parts) {
      if (first.part == nullptr || part.from < first.part->from) first = {&truck, &part};
    }
  }
  return first;
}

// When a discharge was over: where no end was logged, as the next one began. None: it goes on.
std::optional<Seconds> over_at(const Look& look, const PartState& load) {
  if (load.to) return load.to;
  std::optional<Seconds> next;
  for (const TruckState& truck : look.state.trucks) {
    for (const PartState& part : truck.parts) {
      if (&part == &load || part.from < load.from) continue;
      next = std::min(next.value_or(part.from), part.from);
    }
  }
  if (!next && (!look.asof.live || look.state.closed)) next = look.asof.at;
  return next;
}

bool tested(const PourState& state, const Mix& mix, Seconds until) {
  return std::any_of(state.tests.begin(), state.tests.end(), [&](const TestState& test) {
    return test.what.temp && test.at <= until && mix_of(state, test.what.ticket) == &mix;
  });
}

void look_load_untested(const Look& look, const Rule& rule, Findings& out) {
  for (const Mix& mix : look.plan().mixes) {
    const First load = first_load(look.state, mix.id);
    if (load.part == nullptr) continue;
    const auto until = over_at(look, *load.part);
    if (!until || *until > look.asof.at || tested(look.state, mix, *until)) continue;
    Finding f = found(rule);
    f.element = load.part->element;
    f.ticket = load.truck->ticket;
    f.from = load.part->from;
    f.to = *until;
    f.ref = load.part->ref;
    f.sentence = said(
        "mix {mix}: placed with no temperature measured on it by the end of its first load, ticket "
        "{ticket}");
    f.facts = {{"mix", mix.id.text}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kLoadUntested{
    {"load-untested", said("Concrete not tested"), Severity::mend, Cost::perhaps,
     "setting time and form pressure reckoned with a temperature nobody measured",
     said("ASTM C94 asks for a temperature with the other tests of a load (from memory)"),
     "a temperature of each mix by the end of its first discharge", "plan, by the engineer",
     said("Measure the temperature of this mix now and log it")},
    look_load_untested};

}  // namespace rb
