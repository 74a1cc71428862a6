// Who may sign a pour, and what a signature would leave open.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "check/review.h"
#include "pour/log/state.h"

namespace rb::screens {

/// A person in one role the plan gives.
struct SignerView {
  PersonId person;
  std::string name;
  event::Role role = event::Role::foreman;
  bool has_key = false;               ///< in this pour
  std::optional<Moment> signed_at{};  ///< in this role, last
  std::size_t after = 0;              ///< events entered since then that may change what was signed
};

struct SignView {
  std::vector<SignerView> signers;  ///< in the order of the plan
  /// Keys of the causes of weight stop or mend that nobody accepted, in the order of the report.
  std::vector<std::string> open;
  bool pour_open = false;  ///< the pour is not closed yet

  /// Who may witness a key of `person`: people of another role with a key, each once.
  [[nodiscard]] std::vector<const SignerView*> witnesses_for(const PersonId& person) const;
  /// A person in the first of the roles; null: the plan gives none.
  [[nodiscard]] const SignerView* find(const PersonId& person) const;
};

SignView make_sign_view(const PourState& state, const CheckReport& report);

}  // namespace rb::screens
