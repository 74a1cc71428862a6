// A plan amended while its pour goes on: one of a closed list of paths, which are those that may
// change without breaking what was logged. What findings are held to (limits, a form's rating) is
// not among them: a pour is judged by what was asked of it when it began.
//
// A path names fields and ids, one behind the other with "/" between; in an id "~1" stands for "/"
// and "~0" for "~", as in a JSON pointer (RFC 6901).
//
//   name, site                               text
//   people/ID                                an object: changed, or added
//   people/ID/name, people/ID/role           text
//   mixes/ID                                 an object: added
//   elements/ID/thickness, .../thickness_top metres
//   elements/ID/rows/SIDE/ROW                an object: added
//   elements/ID/rows/SIDE/ROW/z              metres; while the row has not run
//   elements/ID/rows/SIDE/ROW/serves         lift numbers
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/saying.h"
#include "pour/plan/most.h"
#include "pour/plan/plan.h"

namespace rb {

struct Amended {
  Plan plan;
  std::string was;                            ///< what stood there, JSON text; empty: nothing
  std::optional<std::size_t> row_added_to{};  ///< the element; the row stands last there
  /// The element and row whose height is another.
  std::optional<std::pair<std::size_t, std::size_t>> row_moved{};
};

/// `value` is JSON text. The plan as amended is read as every plan is: an error of kind input names
/// the path, or what of the plan does not hold with the new value.
Result<Amended> amended(const Plan& plan, const std::string& path, const std::string& value,
                        Bounds bounds = Bounds::kept);

/// What a path names, to be told: "thickness of CW2"; a path of no list stands as it is.
Saying amended_what(const std::string& path);
/// A value at a path, to be told: "0.30 m"; empty where nothing stood.
Saying amended_value(const std::string& path, const std::string& value);

/// A path of these parts.
std::string amend_path(const std::vector<std::string>& parts);

}  // namespace rb
