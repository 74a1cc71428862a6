#include "screens/view/settings.h"

#include <algorithm>

namespace rb::screens {

const Person* holder_of(const Plan& plan, const std::optional<Person>& chosen) {
  if (chosen) {
    const Person* known = plan.find(chosen->id);
    if (known != nullptr && *known == *chosen) return known;
  }
  const auto foreman = std::find_if(plan.people.begin(), plan.people.end(),
                                    [](const Person& p) { return p.role == "foreman"; });
  return foreman == plan.people.end() ? nullptr : &*foreman;
}

}  // namespace rb::screens
