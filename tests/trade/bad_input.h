// Numbers no formula may swallow, for tables of bad inputs.
#pragma once

#include <doctest/doctest.h>

#include <limits>
#include <string>

#include "base/result.h"

namespace rb {

inline constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Checks that a result failed in the way told and that its words name the culprit.
template <class T>
void check_fails(const Result<T>& result, Error::Kind kind, const std::string& word) {
  CAPTURE(word);
  REQUIRE_FALSE(result.has_value());
  CHECK(result.error().kind == kind);
  CAPTURE(to_text(result.error()));
  CHECK(to_text(result.error()).find(word) != std::string::npos);
  CHECK_FALSE(result.error().remedy.empty());
}

}  // namespace rb
