#include <fmt/format.h>

#include <cstdio>

#include "app/book_pours.h"
#include "check/check.h"

namespace rb {

Exit run_check(const CheckWish& wish) {
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto pours = chosen_pours(*book, wish.pour);
  if (!pours) return report(pours.error());
  bool clean = true;
  std::vector<std::string> texts;
  for (const PourId& pour : *pours) {  // one at a time: a book may be long
    const auto state = folded(*book, pour);
    if (!state) return report(state.error());
    const CheckReport checked = check(*state, AsOf::end(*state));
    clean = clean && checked.clean();
    texts.push_back(wish.json ? to_json(*state, checked) : to_text(*state, checked));
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
