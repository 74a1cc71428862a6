// Names as the record shows them: people by name, places by the plan's ids, moments from the clock.
#pragma once

#include <string>

#include "pour/log/log_entry.h"
#include "pour/log/state.h"

namespace rb {

class Names {
 public:
  explicit Names(const PourState& state) : state_(state), plan_(*state.plan) {}

  [[nodiscard]] std::string person(const PersonId& id) const {
    const Person* found = plan_.find(id);
    return found != nullptr && !found->name.empty() ? found->name : id.text;
  }
  [[nodiscard]] std::string by(EventRef ref) const { return person(event(ref).by); }
  [[nodiscard]] std::string element(std::size_t index) const {
    return plan_.elements[index].id.text;
  }
  [[nodiscard]] const Row& row(std::size_t element, std::size_t index) const {
    return plan_.elements[element].rows[index];
  }
  [[nodiscard]] const Event& event(EventRef ref) const { return state_.log[ref].event; }
  [[nodiscard]] Moment when(EventRef ref) const { return state_.log[ref].when; }
  [[nodiscard]] Moment moment(Seconds at) const { return state_.moment(at); }
  [[nodiscard]] std::optional<Moment> moment(const std::optional<Seconds>& at) const {
    return at ? std::optional{state_.moment(*at)} : std::nullopt;
  }

 private:
  const PourState& state_;
  const Plan& plan_;
};

}  // namespace rb
