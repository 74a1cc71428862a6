#include <algorithm>

#include "check/rule.h"

namespace rb {

const char* to_text(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return "stop";
    case Severity::mend:
      return "mend";
    case Severity::note:
      return "note";
  }
  return "";
}

std::span<const RuleCard> rule_cards() {
  static const auto cards = [] {
    std::vector<RuleCard> list;
    list.reserve(rules().size());
    for (const Rule* rule : rules()) list.push_back(rule->card);
    return list;
  }();
  return cards;
}

const RuleCard* find_card(std::string_view rule) {
  const auto cards = rule_cards();
  const auto card =
      std::find_if(cards.begin(), cards.end(), [&](const RuleCard& c) { return rule == c.id; });
  return card == cards.end() ? nullptr : &*card;
}

Finding found(const Rule& rule) {
  Finding f;
  f.rule = rule.card.id;
  f.severity = rule.card.severity;
  f.source.words = rule.card.source;
  f.advice = rule.card.advice;
  return f;
}

Source limit_source(const Rule& rule, LimitFrom from) {
  if (from == LimitFrom::plan) return {.code = Source::Code::plan};
  return {.code = Source::Code::standard, .words = rule.card.source};
}

}  // namespace rb
