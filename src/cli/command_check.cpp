#include <fmt/format.h>

#include <cstdio>

#include "app/book_pours.h"
#include "check/report_unread.h"
#include "check/say_finding.h"
#include "cli/commands.h"

namespace rb {

Exit run_check(const CheckWish& wish) {
  const auto book = Logbook::open(wish.book, Access::read);
  if (!book) return report(book.error());
  const auto pours = chosen_pours(*book, wish.pour);
  if (!pours) return report(pours.error());
  bool clean = true;
  bool damaged = false;
  std::vector<std::string> texts;
  for (const PourId& pour : *pours) {  // one at a time: a book may be long
    const auto read = read_pour(*book, pour);
    if (!read) return report(read.error());
    damaged = damaged || !read->unread.damaged.empty();
    if (!read->state) {
      const PourWithoutPlan lost{pour, read->whole, read->unread};
      texts.push_back(wish.json ? to_json(lost) : to_text(lost));
      continue;
    }
    const CheckReport checked = check(*read->state, AsOf::end(*read->state));
    clean = clean && checked.clean();
    texts.push_back(wish.json ? to_json(*read->state, checked, read->unread)
                              : to_text(*read->state, checked, read->unread));
  }
  if (!wish.json) {
    fmt::print("{}", fmt::join(texts, "\n"));
  } else if (texts.size() == 1) {
    fmt::print("{}\n", texts.front());
  } else {
    fmt::print("[{}]\n", fmt::join(texts, ",\n"));
  }
  if (damaged) return Exit::book;
  return clean ? Exit::fine : Exit::findings;
}

Exit run_rules() {
  for (const RuleCard& card : rule_cards()) {
    fmt::print(
        "{} ({})\n  guards against: {}\n  source:         {}\n  limit:          {}\n"
        "  changed by:     {}\n  do:             {}\n\n",
        card.id, to_text(card.severity), card.guards, filled(card.source, {}, kTerminal),
        filled(card.limit, {}, kTerminal), card.changed_by, card.advice);
  }
  return Exit::fine;
}

}  // namespace rb
