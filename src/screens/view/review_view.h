// What was said of each cause of findings, as the screens show it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "check/review.h"
#include "pour/log/state.h"

namespace rb::screens {

struct GroupView {
  std::string key;  ///< Finding::group
  Hex figures;      ///< what is accepted or sent back is this
  Standing standing = Standing::open;
  bool came_back = false;  ///< something was said of it before its figures changed
  /// Who said so, when and why; empty of a group of which nothing was said.
  std::string by{};
  std::optional<Moment> at{};
  std::string why{};
};
/// In the order of the report.
std::vector<GroupView> make_group_views(const PourState& state, const CheckReport& report);

}  // namespace rb::screens
