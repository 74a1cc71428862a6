#include "screens/view/sign_view.h"

#include <algorithm>

#include "pour/log/log_entry.h"
#include "pour/outlook/signatures.h"

namespace rb::screens {

std::vector<const SignerView*> SignView::witnesses_for(const PersonId& person) const {
  const auto has = [&](const PersonId& who, event::Role role) {
    return std::any_of(signers.begin(), signers.end(), [&](const SignerView& one) {
      return one.person == who && one.role == role;
    });
  };
  std::vector<const SignerView*> able;
  for (const SignerView& one : signers) {
    const bool listed = std::any_of(able.begin(), able.end(), [&](const SignerView* known) {
      return known->person == one.person;
    });
    if (one.person != person && one.has_key && !listed && !has(person, one.role)) {
      able.push_back(&one);
    }
  }
  return able;
}

const SignerView* SignView::find(const PersonId& person) const {
  const auto found = std::find_if(signers.begin(), signers.end(),
                                  [&](const SignerView& one) { return one.person == person; });
  return found == signers.end() ? nullptr : &*found;
}

SignView make_sign_view(const PourState& state, const CheckReport& report) {
  SignView view;
  view.open = to_be_named(review_of(state, report));
  view.pour_open = state.open();
  const auto roles = event::words_of(event::Role{});
  for (const Person& person : state.plan->people) {
    for (std::size_t i = 0; i < roles.size(); ++i) {
      if (!person.has_role(roles[i])) continue;
      view.signers.push_back({.person = person.id,
                              .name = person.name.empty() ? person.id.text : person.name,
                              .role = static_cast<event::Role>(i),
                              .has_key = enrolled(state, person.id) != nullptr});
    }
  }
  for (const SignatureState& made : signatures_of(state)) {
    for (SignerView& one : view.signers) {
      if (one.person != made.by || one.role != made.role) continue;
      one.signed_at = state.log[made.ref].event.at;
      one.after = made.unsettled;
    }
  }
  return view;
}

}  // namespace rb::screens
