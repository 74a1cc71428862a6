// The screens of what is done about a pour besides tapping it: a run entered afterwards, signing,
// the record of a day.
#include <array>

#include "pour/log/log_entry.h"
#include "screens/book/showcase_parts.h"
#include "screens/correct/correct_fields.h"

namespace rb::screens {

namespace {

using SignAt = SignDraft::Step;

SignDraft signing_at(const PourState& state, SignAt step) {
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

template <SignAt step>
Drafts sign(const PourState& state) {
  return with(signing_at(state, step));
}
template <RanEarlierDraft::Step step>
Drafts ran(const PourState& state) {
  return with(ran_at(state, step));
}

// The last tap of a kind being corrected, at a step.
template <class Kind>
Drafts correcting_field(const PourState& state, CorrectDraft::Step step, CorrectField field) {
  CorrectDraft draft{.step = step, .typed = "0512", .field = static_cast<int>(field)};
  for (EventRef ref = state.log.size(); ref-- > 0;) {
    const LogEntry& entry = state.log[ref];
    if (!std::holds_alternative<Kind>(entry.event.what)) continue;
    draft.target = entry.event.id;
    draft.at = entry.event.at;
    draft.what = entry.event.what;
    return with(std::move(draft));
  }
  return with(MoreDraft{});
}

constexpr std::array kAfterwards{
    ShowcaseScreen{"correct-clock", true,
                   [](const PourState& s) {
                     return correcting_field<event::Run>(s, CorrectDraft::Step::clock, {});
                   }},
    ShowcaseScreen{"correct-truck", true,
                   [](const PourState& s) {
                     return correcting_field<event::Truck>(s, CorrectDraft::Step::choose, {});
                   }},
    ShowcaseScreen{"correct-volume", true,
                   [](const PourState& s) {
                     return correcting_field<event::Truck>(s, CorrectDraft::Step::figure,
                                                           CorrectField::volume);
                   }},
    ShowcaseScreen{"correct-bay", true,
                   [](const PourState& s) {
                     return correcting_field<event::Top>(s, CorrectDraft::Step::number,
                                                         CorrectField::bay);
                   }},
    ShowcaseScreen{"correct-motors", true,
                   [](const PourState& s) {
                     return correcting_field<event::Hang>(s, CorrectDraft::Step::motors,
                                                          CorrectField::motors);
                   }},
    ShowcaseScreen{"motor-out", true,
                   [](const PourState& s) {
                     return with(MotorOutDraft{ran_at(s, RanEarlierDraft::Step::form).place});
                   }},
    ShowcaseScreen{"ran-earlier", true, ran<RanEarlierDraft::Step::form>},
    ShowcaseScreen{"ran-earlier-clock", true, ran<RanEarlierDraft::Step::clock>},
    ShowcaseScreen{"ran-earlier-why", true, ran<RanEarlierDraft::Step::why>},
    ShowcaseScreen{"amend", true, [](const PourState&) { return with(AmendDraft{}); }},
    ShowcaseScreen{"sign", true, [](const PourState&) { return with(SignDraft{}); }},
    ShowcaseScreen{"sign-verdict", true, sign<SignAt::verdict>},
    ShowcaseScreen{"sign-pin", true, sign<SignAt::pin>},
    ShowcaseScreen{"sign-witness", true, sign<SignAt::witness>},
    ShowcaseScreen{"sign-new", true,
                   [](const PourState& s) {
                     SignDraft draft = signing_at(s, SignAt::new_pin);
                     draft.differs = true;
                     return with(draft);
                   }},
    ShowcaseScreen{"sign-answer", true, sign<SignAt::answer>},
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
