#include <array>

#include "check/rule.h"

namespace rb {

namespace {

constexpr std::array<const Rule*, 28> kRules{
    &kHeadHigh, &kRiseFast,      &kCableOpen,     &kDoseLow,      &kRowMissed, &kRunShort,
    &kKnitLate, &kRunUnended,    &kInsertMissing, &kInsertSparse, &kRowFar,    &kLiftDeep,
    &kRowEmpty, &kTopFell,       &kLoadOld,       &kTempOut,      &kVolumeOff, &kPowerOver,
    &kVoltsLow, &kSpeedOut,      &kReadyOpen,     &kDoseHigh,     &kRunLong,   &kClockStep,
    &kUnsigned, &kEnteredBefore, &kKeptLate,      &kFromScript};

}  // namespace

const char* to_text(Weight weight) {
  switch (weight) {
    case Weight::stop:
      return "stop";
    case Weight::mend:
      return "mend";
    case Weight::note:
      return "note";
  }
  return "";
}

std::span<const Rule* const> rules() {
  return kRules;
}

std::span<const RuleCard> rule_cards() {
  static const auto cards = [] {
    std::vector<RuleCard> list;
    list.reserve(kRules.size());
    for (const Rule* rule : kRules) list.push_back(rule->card);
    return list;
  }();
  return cards;
}

Finding found(const Rule& rule) {
  Finding f;
  f.rule = rule.card.id;
  f.weight = rule.card.weight;
  f.source.words = rule.card.source;
  f.advice = rule.card.advice;
  return f;
}

Source limit_source(const Rule& rule, LimitFrom from) {
  if (from == LimitFrom::plan) return {.code = Source::Code::plan};
  return {.code = Source::Code::standard, .words = rule.card.source};
}

}  // namespace rb
