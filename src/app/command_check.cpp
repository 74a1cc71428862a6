#include <fmt/format.h>

#include <cstdio>

#include "app/book_pours.h"
#include "check/check.h"

namespace rb {

Exit run_check(const CheckWish& wish) {
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto states = pours_of(*book, wish.pour);
  if (!states) return report(states.error());
  bool clean = true;
  std::vector<std::string> texts;
  for (const PourState& state : *states) {
    const CheckReport checked = check(state, AsOf::end(state));
    clean = clean && checked.clean();
    texts.push_back(wish.json ? to_json(state, checked) : to_text(state, checked));
  }
  if (!wish.json) {
    fmt::print("{}", fmt::join(texts, "\n"));
  } else if (texts.size() == 1) {
    fmt::print("{}\n", texts.front());
  } else {
    fmt::print("[{}]\n", fmt::join(texts, ",\n"));
  }
  return clean ? Exit::fine : Exit::findings;
}

Exit run_rules() {
  for (const RuleCard& card : rule_cards()) {
    fmt::print(
        "{} ({})\n  guards against: {}\n  source:         {}\n  limit:          {}\n"
        "  changed by:     {}\n  do:             {}\n\n",
        card.id, to_text(card.weight), card.guards, card.source, card.limit, card.changed_by,
        card.advice);
  }
  return Exit::fine;
}

}  // namespace rb
