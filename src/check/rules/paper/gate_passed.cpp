// gate-passed: somebody went on over what was not in order, by name and with a reason.
#include "check/rule.h"
#include "pour/log/log_entry.h"
#include "pour/outlook/gates.h"

namespace rb {

namespace {

void look_gate_passed(const Look& look, const Rule& rule, Findings& out) {
  const PourState& state = look.state;
  for (const OverrideState& passed : state.overrides) {
    const Event& event = state.log[passed.ref].event;
    const Person* person = state.plan->find(event.by);
    const char* words = gate_words(passed.what.rule);
    Finding f = found(rule);
    f.element = passed.element;
    f.row = passed.row;
    f.lift = passed.what.lift;
    f.side = passed.what.side;
    f.from = passed.at;
    f.ref = passed.ref;
    f.sentence = said("{what}: {who} went on over it: {why}");
    f.facts = {{"who", person == nullptr || person->name.empty() ? event.by.text : person->name},
               {"what", words == nullptr ? FactValue{passed.what.rule} : FactValue{Term{words}}},
               {"why", passed.what.chosen ? FactValue{Term{event::says(*passed.what.chosen)}}
                                          : FactValue{passed.what.why}}};
    out.push_back(std::move(f));
  }
}

}  // namespace

extern const Rule kGatePassed{
    {"gate-passed", said("Gone on over what was not in order"), Severity::note, Cost::paper,
     "work on what was not in order that nobody answers for", said("common practice, no source"),
     "each override, with its name and reason", "nobody",
     said("Put right what was gone on over; the override clears nothing")},
    look_gate_passed};

}  // namespace rb
