// A rule: its card, and the look it takes. One file a rule; rules.cpp lists them. Inside this room.
#pragma once

#include "base/limits.h"
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
Source limit_source(const Rule& rule, LimitFrom from);

/// All rules in the order they are printed.
std::span<const Rule* const> rules();

extern const Rule kDoseLow, kDoseHigh, kRunShort, kRunLong, kRowMissed, kRowEmpty, kHeadHigh,
    kRiseFast, kLiftDeep, kKnitLate, kTopFell, kLoadOld, kTempOut, kVolumeOff, kPowerOver,
    kVoltsLow, kSpeedOut, kCableOpen, kRowFar, kInsertMissing, kInsertSparse, kClockStep,
    kRunUnended, kReadyOpen, kUnsigned, kEnteredBefore, kKeptLate, kFromScript;

}  // namespace rb
