#include <string_view>
#include <unordered_map>

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
  static const auto by_id = [] {
    std::unordered_map<std::string_view, const RuleCard*> known;
    for (const RuleCard& card : rule_cards()) known.emplace(card.id, &card);
    return known;
  }();
  const auto card = by_id.find(rule);
  return card == by_id.end() ? nullptr : card->second;
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
