// The screens of what is done about a pour besides tapping it: a run entered afterwards, signing,
// the record of a day.
#include <array>

#include "screens/book/showcase_parts.h"

namespace rb::screens {

namespace {

using Step = SignDraft::Step;

SignDraft signing_at(const PourState& state, Step step) {
  SignDraft draft{.step = step};
  if (!state.plan->people.empty()) draft.person = state.plan->people.front().id;
  for (const char key : {'2', '0', '4', '8', '1', '6'}) draft.pin.press(key);
  return draft;
}

RanEarlierDraft ran_at(const PourState& state, RanEarlierDraft::Step step) {
  const Element& element = state.plan->elements.front();
  RanEarlierDraft draft{.step = step, .typed = "0512"};
  if (!element.rows.empty()) {
    draft.place = {element.id, element.rows.front().side, element.rows.front().id};
  }
  const Seconds end = state.closed ? between(state.zero, *state.closed) : state.last;
  draft.from = state.moment(end - seconds(3720));
  return draft;
}

template <Step step>
Drafts sign(const PourState& state) {
  return with(signing_at(state, step));
}
template <RanEarlierDraft::Step step>
Drafts ran(const PourState& state) {
  return with(ran_at(state, step));
}

constexpr std::array kAfterwards{
    ShowcaseScreen{"ran-earlier", true, ran<RanEarlierDraft::Step::form>},
    ShowcaseScreen{"ran-earlier-clock", true, ran<RanEarlierDraft::Step::clock>},
    ShowcaseScreen{"ran-earlier-why", true, ran<RanEarlierDraft::Step::why>},
    ShowcaseScreen{"sign", true, [](const PourState&) { return with(SignDraft{}); }},
    ShowcaseScreen{"sign-verdict", true, sign<Step::verdict>},
    ShowcaseScreen{"sign-pin", true, sign<Step::pin>},
    ShowcaseScreen{"sign-witness", true, sign<Step::witness>},
    ShowcaseScreen{"sign-new", true,
                   [](const PourState& s) {
                     SignDraft draft = signing_at(s, Step::new_pin);
                     draft.differs = true;
                     return with(draft);
                   }},
    ShowcaseScreen{"sign-answer", true, sign<Step::answer>},
    ShowcaseScreen{"record", true,
                   [](const PourState&) { return with(RecordDraft{.asked = true}); }},
    ShowcaseScreen{"record-path", true,
                   [](const PourState&) { return with(RecordDraft{.typing = "/media/x"}); }},
};

}  // namespace

std::span<const ShowcaseScreen> showcase_of_afterwards() {
  return kAfterwards;
}

}  // namespace rb::screens
