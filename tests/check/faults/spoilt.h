// The good pour spoilt in one way for each rule of the list.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "../pour_text.h"

namespace rb::test {

struct Spoilt {
  std::string rule;
  std::function<void(Pour&)> spoil;
  std::set<std::string> besides;  ///< what else follows from it
  std::optional<double> live{};   ///< a rule of the live look: when it speaks

  [[nodiscard]] Checked seen() const;
};

const std::vector<Spoilt>& spoilt();

}  // namespace rb::test
