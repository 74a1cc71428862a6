// A rule: its card, and the look it takes. One file a rule; rules.cpp lists them. Inside this room.
#pragma once

#include "check/look.h"

namespace rb {

using Findings = std::vector<Finding>;

struct Rule {
  RuleCard card;
  void (*look)(const Look& look, const Rule& rule, Findings& out);
};

/// A finding of this rule, its weight, advice and the card's source filled in.
Finding found(const Rule& rule);

/// Where a limit came from: the plan, or the default with the card's source.
std::string limit_source(const Rule& rule, LimitFrom from);

/// Whether a figure is over, or under, its limit by more than the rounding of a sum: what comes out
/// equal on paper is neither.
inline constexpr double kRounding = 1e-9;
template <class Figure>
bool over(const Figure& figure, const Figure& limit) {
  return figure > limit * (1 + kRounding);
}
template <class Figure>
bool under(const Figure& figure, const Figure& limit) {
  return figure < limit * (1 - kRounding);
}

/// All rules in the order they are printed.
std::span<const Rule* const> rules();

extern const Rule kDoseLow, kDoseHigh, kRunShort, kRunLong, kRowMissed, kRowEmpty, kHeadHigh,
    kRiseFast, kLiftDeep, kKnitLate, kTopFell, kLoadOld, kTempOut, kVolumeOff, kPowerOver,
    kVoltsLow, kSpeedOut, kCableOpen, kRowFar, kInsertMissing, kInsertSparse, kClockStep,
    kRunUnended, kReadyOpen, kUnsigned, kEnteredBefore, kKeptLate, kFromScript;

}  // namespace rb
