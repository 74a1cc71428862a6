// A rule: its card, and the look it takes. One file a rule, in rules/; the build lists
// them. Inside this room.
#pragma once

#include "base/limits.h"
#include "check/look.h"

namespace rb {

using Findings = std::vector<Finding>;

struct Rule {
  RuleCard card;
  void (*look)(const Look& look, const Rule& rule, Findings& out);
};

/// A finding of this rule, its severity, advice and the card's source filled in.
Finding found(const Rule& rule);

/// Where a limit came from: the plan, or the default with the card's source.
Source limit_source(const Rule& rule, LimitFrom from);

/// All rules: the files of check/rules, listed by the build.
std::span<const Rule* const> rules();

}  // namespace rb
