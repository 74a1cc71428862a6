// An element of a plan read from JSON. Inside this room.
#pragma once

#include <set>
#include <string>

#include "pour/plan/json_fields.h"

namespace rb {

/// Refuses a list whose items share an id.
template <class Items>
void unique_ids(const Fields& at, const char* list, const Items& items) {
  std::set<std::string> seen;
  for (const auto& item : items) {
    if (!seen.insert(item.id.text).second) {
      at.refuse(list, {said("names {id} twice"), {{"id", item.id.text}}},
                said("Give each its own id"));
    }
  }
}

/// Every number, name and place in it is checked.
Element read_element(Fields f);

}  // namespace rb
