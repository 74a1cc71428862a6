#include "app/pour_list.h"

namespace rb {

namespace {

// What a mark tells of a pour; the rest shows when its events are read.
screens::PourCard card_of_mark(const PourMark& mark) {
  screens::PourCard card{
      .id = mark.pour, .site = mark.site, .name = mark.name, .opened = mark.opened};
  if (mark.closed == PourMark::Closed::yes) card.closed = mark.opened;
  return card;
}

}  // namespace

screens::DamageSeen damage_seen(const ReadPour& read) {
  return {read.unread.damaged.size(), read.damaged_ids};
}

screens::PourCard card_of(const ReadPour& read, const PourMark& mark) {
  screens::PourCard card = read.state ? screens::make_pour_card(*read.state) : card_of_mark(mark);
  card.damage = damage_seen(read);
  return card;
}

screens::PourCard PourList::known_card(const Logbook& book, const PourMark& mark) {
  Known& known = known_[mark.pour];
  if (known.last == mark.last) return known.card;
  const auto read = read_pour(book, mark.pour);
  // A pour that cannot be read stands in the list all the same; what ails it shows when it is
  // opened.
  if (!read) return card_of_mark(mark);
  known = {mark.last, card_of(*read, mark)};
  return known.card;
}

Result<ListPart> PourList::part(const Logbook& book, const ListWish& wish, bool folded) {
  PourQuery query{.text = wish.find, .when = {}, .first = wish.first, .count = wish.count};
  if (const auto day = parse_day(wish.find, utc_offset_)) {
    query.when = MomentSpan{*day, *day + std::chrono::hours{24}};
    query.text.clear();
  }
  const auto page = book.pours(query);
  if (!page) return Failed{page.error()};
  ListPart answer{{}, {.first = wish.first, .total = page->all, .find = wish.find}};
  for (const PourMark& mark : page->pours) {
    answer.cards.push_back(folded ? known_card(book, mark) : card_of_mark(mark));
  }
  return answer;
}

}  // namespace rb
